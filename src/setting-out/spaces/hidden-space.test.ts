import { describe, expect, test } from 'vitest';
import { slidingJob } from '../../../test/doors/sliding-job.ts';
import { smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

type Fields = Readonly<Record<string, unknown>>;

function outOf(...records: readonly Fields[]): SetOut {
  const job = smallJob();
  job.design.records = [
    { id: 'box', kind: 'piece', name: 'A box', width: '600 mm', height: '500 mm', depth: '300 mm' },
    { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
    { id: 'inside', kind: 'opening', parent: 'case', split: 'back' },
    { id: 'radio', kind: 'opening', parent: 'inside' },
    { id: 'cables', kind: 'opening', parent: 'inside', size: '60 mm' },
    { id: 'shelf', kind: 'shelf', parent: 'radio' },
    ...records,
  ];
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const mm = (of: SetOut, name: string) => of.ledger.ticks(of.dimensions.get(name)!) / 3200;

describe('an opening split from front to back', () => {
  const plain = outOf();

  test('has a panel between, and what stands before it is as much shallower', () => {
    expect(plain.snags).toEqual([]);
    expect(mm(plain, 'cables.depth')).toBe(60);
    // 300 mm without a back, less the panel and what it hides.
    expect(mm(plain, 'radio.depth')).toBe(300 - 60 - 18);
    expect(mm(plain, 'shelf in radio.width')).toBe(300 - 60 - 18);
    const panel = plain.parts.find((p) => p.id === 'inside/panel:1')!;
    expect(panel.place.thickness).toBe('-y');
    expect(plain.ledger.ticks(panel.place.origin[1]) / 3200).toBe(300 - 60);
  });

  test('has the panel screwed to both sides', () => {
    expect(plain.joints.filter((j) => j.part === 'inside/panel:1').map((j) => j.mate)).toEqual([
      'case/left-side',
      'case/right-side',
    ]);
  });

  test('keeps what is hidden as deep as asked behind an inset door', () => {
    const door = {
      id: 'door',
      kind: 'door',
      parent: 'case',
      board: 'birch18',
      over: ['inside'],
      hang: 'inset',
    };
    const shut = outOf(door);
    expect(mm(shut, 'cables.depth')).toBe(60);
    expect(mm(shut, 'radio.depth')).toBeLessThan(300 - 60 - 18 - 18);
  });

  test('that is deeper than its case is told', () => {
    const job = smallJob();
    job.design.records = [
      { id: 'box', kind: 'piece', name: 'A box', width: '600 mm', height: '500 mm', depth: '300 mm' },
      { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
      { id: 'inside', kind: 'opening', parent: 'case', split: 'back' },
      { id: 'radio', kind: 'opening', parent: 'inside' },
      { id: 'cables', kind: 'opening', parent: 'inside', size: '290 mm' },
    ];
    const read = checkJob(job);
    if (!read.ok) throw new Error('refused');
    expect(setOut(read.job).snags.map((s) => [s.code, s.where.path])).toEqual([
      ['openings.no-room', 'design/records/inside/split'],
    ]);
  });
});

describe('the radio station', () => {
  test('hides its leads behind the tuner; holes lead there from both bays and the back', () => {
    const station = setOut(slidingJob());
    expect(station.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(mm(station, 'leads.depth')).toBe(70);
    const bored = station.parts.filter((p) => p.features.some((f) => f.kind === 'hole' && f.use === 'cable'));
    expect(bored.map((p) => p.name).sort()).toEqual([
      'back',
      'first divider',
      'left side',
      'panel at the back of tuner',
    ]);
  });
});
