import { expect, test } from 'vitest';
import { smallJob } from '../../../test/generate/small-job.ts';
import { readJob } from '../../job/index.ts';
import { fromMm } from '../../measure/index.ts';
import type { Fit, SetOut } from '../index.ts';
import { setOut } from '../index.ts';

type Plain = ReturnType<typeof smallJob>;

function fitsOf(change: (job: Plain) => void): { piece: SetOut; named: (id: string) => Fit } {
  const job = smallJob();
  change(job);
  const read = readJob(JSON.stringify(job));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('; '));
  const piece = setOut(read.job);
  expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
  return { piece, named: (id) => piece.fits.find((f) => f.id === id)! };
}

const names = (fit: Fit) => fit.loop.map((m) => `${m.sign > 0 ? '+' : '-'} ${m.name}`);

test('a shelf in the first bay rests on the distance that the divider is set to', () => {
  const { named } = fitsOf(() => {});
  expect(names(named('shelves/shelf:1/length'))).toEqual([
    '+ clear width of left',
    '- length of the shelf 1 in left',
  ]);
});

test('a shelf in the last bay has what the others leave of the bottom, stock included', () => {
  const { named } = fitsOf(() => {});
  expect(names(named('shelf/shelf/length'))).toEqual([
    '+ length of the bottom',
    '- clear width of left',
    '- thickness of the first divider',
    '- length of the shelf in right',
  ]);
});

test('dados are marked from one end, and what goes in is cut as much longer', () => {
  const { piece, named } = fitsOf((job) => {
    Object.assign(job.design.records.find((r) => r.id === 'case')!, { joints: 'dado' });
  });
  expect(names(named('shelf/shelf/length'))).toEqual([
    '+ length of the bottom',
    '- depth of the right side’s channel for the bottom',
    '- place of the dado for the first divider',
    '- thickness of the first divider',
    '+ depth of the first divider’s channel for the shelf in right',
    '+ depth of the right side’s channel for the shelf in right',
    '- length of the shelf in right',
  ]);
  expect(piece.ledger.ticks(named('shelf/shelf/length').gap)).toBe(0);
  const sideways = named('shelf/shelf>upright/divider/thickness');
  // Common practice: nothing to 0.005 in.
  expect(piece.ledger.ticks(sideways.gap)).toBe(fromMm(0.1));
});

test('the film of every coat on every face is taken off the gap beside a door', () => {
  const door = { id: 'door', kind: 'door', parent: 'case', board: 'birch18', over: ['left'], hang: 'inset' };
  const hinge = {
    id: 'butt',
    kind: 'butt',
    screw: 'hinge-screw',
    length: '50 mm',
    width: '18 mm',
    leaf: '1.5 mm',
    screws: 3,
  };
  const screw = { id: 'hinge-screw', kind: 'countersunk', length: '12 mm', diameter: '3 mm', head: '6 mm' };
  const hung = (finishes: unknown) =>
    fitsOf((job) => {
      job.design.records.push(door);
      Object.assign(job.shop.rack, { finishes, hinges: [hinge] });
      job.shop.rack.screws.push(screw);
    });
  const bare = hung([]);
  const coated = hung([{ id: 'varnish', material: 'water-polyurethane' }]);
  const gap = ({ piece, named }: typeof bare) => piece.ledger.ticks(named('door/width').gap);
  expect(gap(bare)).toBe(fromMm(4));
  // Four coats at most, 35 % solids over 11 m² a litre: the label's figures; by the coating trade's spreading rate.
  const coat = Math.round((0.35 / 11) * 3200);
  expect(gap(coated)).toBe(fromMm(4) - 4 * 4 * coat);
});
