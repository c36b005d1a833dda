import { expect, test } from 'vitest';
import { type PlainJob, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { setOut } from '../index.ts';

function setOutWith(cable: Record<string, unknown>, change: (job: PlainJob) => void = () => {}) {
  const job = smallJob();
  job.design.records.push({ id: 'cord', kind: 'cable', ...cable });
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

function holesOf(piece: ReturnType<typeof setOut>) {
  return piece.parts.flatMap((part) =>
    part.features.flatMap((f) =>
      f.kind === 'hole' && f.use === 'cable'
        ? [
            {
              name: part.name,
              wide: piece.ledger.ticks(f.diameter) / 3200,
              at: f.at.map((t) => piece.ledger.ticks(t) / 3200),
            },
          ]
        : [],
    ),
  );
}

const bit = (id: string, kind: string, diameter: string) => ({ id, kind, diameter });

test('a hole is sized for the plug: EN 50075 has 35.3 x 13.7 mm, so 37.9 mm across and at least 2 mm more', () => {
  const corners = Math.hypot(35.3, 13.7);
  expect(corners).toBeCloseTo(37.87, 2);
  const owned = setOutWith(
    { parent: 'back', plug: 'europlug', fromLeft: '100 mm', fromBelow: '80 mm' },
    (job) =>
      job.shop.rack.bits.push(
        bit('forstner-35', 'forstner', '35 mm'),
        bit('saw-44', 'hole-saw', '44 mm'),
        bit('saw-68', 'hole-saw', '68 mm'),
      ),
  );
  expect(owned.snags).toEqual([]);
  expect(holesOf(owned).map((h) => h.wide)).toEqual([44]);
  // Nothing owned that is wide enough: the next size that is sold.
  const none = setOutWith({ parent: 'back', plug: 'europlug', fromLeft: '100 mm', fromBelow: '80 mm' });
  expect(holesOf(none)[0]!.wide).toBe(40);
});

test('the place is measured from the panel, or from the opening it is in', () => {
  const ofPanel = setOutWith({ parent: 'back', plug: '10 mm', fromLeft: '100 mm', fromBelow: '80 mm' });
  const back = ofPanel.parts.find((p) => p.name === 'back')!;
  const [along, across] = holesOf(ofPanel)[0]!.at;
  // The back's width runs to the left.
  expect(back.place.width).toBe('-x');
  expect(along).toBe(80);
  expect(ofPanel.ledger.ticks(back.width) / 3200 - across!).toBe(100);
  const inBay = setOutWith({ parent: 'back', plug: '10 mm', in: 'right', fromBelow: '80 mm' });
  const right = inBay.openings.find((o) => o.id === 'right')!;
  const middle = (inBay.ledger.ticks(right.box.min[0]) + inBay.ledger.ticks(right.box.max[0])) / 6400;
  const place = inBay.parts.find((p) => p.name === 'back')!.place;
  expect(inBay.ledger.ticks(place.origin[0]) / 3200 - holesOf(inBay)[0]!.at[1]!).toBeCloseTo(middle, 2);
});

test('every shelf of a record is bored', () => {
  const piece = setOutWith({ parent: 'shelves', plug: 'jack', fromBack: '40 mm' });
  expect(holesOf(piece).map((h) => h.name)).toEqual(['shelf 1 in left', 'shelf 2 in left']);
});

test.each([
  ['holes.meets-part', { parent: 'back', plug: 'europlug', in: 'left', fromBelow: '235 mm' }],
  ['holes.off-panel', { parent: 'shelf', plug: 'usb-a', fromLeft: '15 mm' }],
  ['holes.wrong-way', { parent: 'upright', plug: 'usb-a', fromRight: '40 mm' }],
  ['holes.no-panel', { parent: 'case', panel: 'lid', plug: 'usb-a' }],
])('%s: what a hole can’t be is a stop at its record', (code, cable) => {
  const piece = setOutWith(cable);
  expect(piece.snags.map((s) => s.code)).toEqual([code]);
  expect(piece.snags[0]!.where.record).toBe('cord');
  expect(holesOf(piece)).toEqual([]);
});

test('two holes keep wood between them', () => {
  const piece = setOutWith({ parent: 'back', plug: '30 mm', fromLeft: '100 mm', fromBelow: '80 mm' }, (job) =>
    job.design.records.push({
      id: 'lead',
      kind: 'cable',
      parent: 'back',
      plug: '30 mm',
      fromLeft: '130 mm',
      fromBelow: '80 mm',
    }),
  );
  expect(piece.snags.map((s) => [s.code, s.where.record])).toEqual([['holes.meet', 'lead']]);
});

test.each([
  ['design.which-panel', { parent: 'case', plug: 'hdmi' }],
  ['design.which-panel', { parent: 'top', panel: 'bottom', plug: 'hdmi' }],
  ['design.placed-twice', { parent: 'back', fromLeft: '50 mm', fromRight: '50 mm', plug: 'hdmi' }],
  ['document.no-such-record', { parent: 'back', in: 'case', plug: 'hdmi' }],
  ['document.unreadable-value', { parent: 'back', plug: 'a large one' }],
  ['design.wrong-parent', { parent: 'base', plug: 'hdmi' }],
])('%s is told before anything is set out', (code, cable) => {
  const job = smallJob();
  job.design.records.push({ id: 'cord', kind: 'cable', ...cable });
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toContain(code);
});
