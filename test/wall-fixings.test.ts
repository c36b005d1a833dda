import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Built, built } from './build/built.ts';

/** The long wall shelf of the examples, before a wall of a kind. */
function onWall(wall: string | undefined, name = 'wall-shelf'): Built {
  const file = new URL(`../examples/${name}.json`, import.meta.url);
  const job = JSON.parse(readFileSync(file, 'utf8'));
  job.design.records = job.design.records.filter((r: { kind: string }) => r.kind !== 'room');
  if (wall) job.design.records.push({ id: 'room', kind: 'room', wall });
  return built(job);
}

function card({ build, drawn }: Built) {
  const operation = build.operations.find((o) => o.kind === 'anchor')!;
  return operation.lines
    .join(' ')
    .replace(/\{(\d+)\}/g, (_, n) => `${drawn.ledger.ticks(operation.lengths[Number(n)]!) / 3200} mm`);
}

test('in studs an anchor goes through rail and back, 40 mm and more into the middle of each (common practice)', () => {
  const text = card(onWall('studs'));
  expect(text).toContain(
    'through 17.8 mm of boards and what covers the wall, and 40 mm further into the stud',
  );
  // The rails are 90 mm high: their middles hang 45 mm below the top.
  expect(text).toContain('45 mm below the underside of the top');
});

test('in masonry the hole is 10 mm deeper than the plug, which sits behind the plaster (common practice)', () => {
  expect(card(onWall('masonry'))).toContain('10 mm deeper than it is long, in solid brick or stone');
});

test('thin boards carry nothing, and a check minds it where the piece hangs', () => {
  expect(card(onWall('hollow'))).toContain('Nothing is hung on thin boards alone');
});

test('where nothing is known of the wall the card tells to look', () => {
  expect(card(onWall(undefined))).toContain('Find the studs, or sound out the masonry');
});

test('what stands is fixed near its top by the same rules', () => {
  const text = card(onWall('studs', 'hall-cupboard'));
  expect(text).toContain('a wood screw through the bracket and what covers the wall');
});
