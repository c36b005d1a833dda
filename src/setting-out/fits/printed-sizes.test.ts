import { expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { readJob } from '../../job/index.ts';
import { toMm } from '../../measure/index.ts';
import { setOut } from '../index.ts';

function made(change: (job: PlainJob) => void) {
  const job = smallJob();
  change(job);
  const read = readJob(JSON.stringify(job));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('; '));
  const piece = setOut(read.job);
  expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
  return {
    fit: (id: string) => {
      const found = piece.fits.find((f) => f.id === id)!;
      const mm = (t: typeof found.gap) => toMm(piece.ledger.ticks(t));
      return { gap: mm(found.gap), printed: mm(found.printed), sizes: found.loop.map((m) => mm(m.printed)) };
    },
    cut: (id: string) => {
      const { length, width } = piece.parts.find((p) => p.id === id)!.cut;
      return [length, width].map((t) => toMm(piece.ledger.ticks(t)));
    },
  };
}

function withTool(job: PlainJob, kind: string, more: object) {
  const tool = job.shop.tools.find((t) => t.kind === kind);
  if (tool) Object.assign(tool, more);
  else job.shop.tools.push({ id: kind, kind, accuracy: '0.5 mm', ...more });
}

const saw = { kerf: '2 mm', step: '0.5 mm', reach: '55 mm' };

test('a shelf is cut to the distance that the divider is set to, not to the drawn one', () => {
  const drawn = made((job) => {
    withTool(job, 'circular-saw', saw);
    withTool(job, 'marking', { step: '1 mm' });
  });
  // 950 wide inside the top, less two sides and a divider of 18: bays of 448, which a rule sets.
  expect(drawn.fit('shelf/shelf/length')).toMatchObject({ gap: 0, printed: 0, sizes: [914, 448, 18, 448] });
  const odd = made((job) => {
    withTool(job, 'circular-saw', saw);
    withTool(job, 'marking', { step: '1 mm' });
    job.design.records[0]!.width = '1001.2 mm';
  });
  // Bays of 448.6: the divider is set to 449, so the second has 915 - 449 - 18 = 448, and not the 448.5 that the saw could cut.
  expect(odd.fit('shelf/shelf/length')).toMatchObject({ gap: 0, printed: 0, sizes: [915, 449, 18, 448] });
  expect(odd.cut('shelf/shelf')[0]).toBe(448);
  expect(odd.cut('shelves/shelf:1')[0]).toBe(448.5);
});

test('both doors of a pair give up as much where rounding would use up their gaps', () => {
  const hung = (sawn: string) =>
    made((job) => {
      withTool(job, 'circular-saw', { ...saw, step: sawn });
      job.design.records[0]!.width = '1001.9 mm';
      job.design.records = job.design.records.filter(
        (r) => !['left', 'right', 'upright', 'shelves', 'shelf'].includes(r.id as string),
      );
      Object.assign(job.design.records.find((r) => r.id === 'inside')!, { split: undefined });
      job.design.records.push({
        id: 'doors',
        kind: 'door',
        parent: 'case',
        board: 'birch18',
        over: ['inside'],
        count: 2,
        hang: 'inset',
        gap: '1.2 mm',
      });
      job.shop.rack.screws.push({
        id: 'hinge-screw',
        kind: 'countersunk',
        length: '12 mm',
        diameter: '3 mm',
        head: '6 mm',
      });
      Object.assign(job.shop.rack, {
        hinges: [
          {
            id: 'butt',
            kind: 'butt',
            screw: 'hinge-screw',
            length: '50 mm',
            width: '18 mm',
            leaf: '1.5 mm',
            screws: 3,
          },
        ],
      });
    });
  // 915.9 inside, less 3.6: 456.15 each. A saw set to 0.1 makes the bottom 915.9 and each door 456.1.
  expect(hung('0.1 mm').fit('doors/width')).toMatchObject({ gap: 3.6, printed: 3.7 });
  // Set to 2 mm it makes the bottom 914; doors of 456 would leave 2 of 3.6, so both become 454.
  const coarse = hung('2 mm');
  expect(coarse.fit('doors/width').sizes).toEqual([914, 454, 454]);
  expect(coarse.fit('doors/width').printed).toBe(6);
});

test('sizes of parts that nothing must fit are rounded by the saw alone', () => {
  const { cut } = made((job) => withTool(job, 'circular-saw', { ...saw, step: '1 mm' }));
  expect(cut('case/left-side').every((mm) => Number.isInteger(mm))).toBe(true);
});

test('edging that ends beside the neighbours is cut no longer than its panel leaves between them', () => {
  const job = smallJob();
  Object.assign(recordOf(job, 'case'), { joints: 'rabbet' });
  // Rabbets of so odd a depth that the bottom, rounded down, comes short of what was drawn.
  withTool(job, 'router', { step: '1/64 in' });
  const read = readJob(JSON.stringify(job));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const { parts, joints, ledger } = setOut(read.job);
  const strip = parts.find((p) => p.name === 'edging for bottom')!;
  const bottom = parts.find((p) => p.id === 'case/bottom')!;
  const goesIn = joints
    .filter((j) => j.part === bottom.id && j.letIn)
    .map((j) => ledger.ticks(j.letIn!.depth));
  expect(goesIn).toHaveLength(2);
  const clear = ledger.ticks(bottom.cut.length) - goesIn[0]! - goesIn[1]!;
  expect(clear).toBeLessThan(ledger.ticks(strip.length));
  expect(ledger.ticks(strip.cut.length)).toBeLessThanOrEqual(clear);
});
