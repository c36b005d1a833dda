import { expect, test } from 'vitest';
import { type Changes, changed } from '../../test/doors/door-job.ts';
import { checkJob } from './index.ts';

function faults(changes: Changes): string[] {
  const read = checkJob(changed(changes));
  return read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`);
}

test('the cupboard’s doors are sound', () => {
  expect(faults({})).toEqual([]);
});

test('what a door closes must be openings, neighbours, and no other door’s', () => {
  expect(faults({ 'coat-door': { over: ['hooks'] } })).toEqual([
    'document.no-such-record design/records/coat-door/over',
  ]);
  expect(faults({ 'coat-door': { over: ['bags'] } })).toEqual([
    'doors.over-one-opening design/records/coat-door/over',
  ]);
  expect(faults({ 'coat-door': { over: ['inside'] } })).toEqual([
    'doors.over-one-opening design/records/coat-door/over',
  ]);
  expect(faults({ 'coat-door': { over: ['inside', 'coats'] }, 'bag-doors': undefined })).toEqual([
    'doors.openings-apart design/records/coat-door/over',
  ]);
  expect(faults({ 'coat-door': { over: ['coats', 'bags'] }, 'bag-doors': undefined })).toEqual([]);
});

test('a door closes all of a depth that is split from front to back, not a part of it', () => {
  const job = changed({ coats: { split: 'back' }, hooks: undefined, 'coat-door': { over: ['before'] } });
  job.design.records.push(
    { id: 'before', kind: 'opening', parent: 'coats' },
    { id: 'behind', kind: 'opening', parent: 'coats', size: '60 mm' },
  );
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
    'doors.part-of-depth design/records/coat-door/over',
  ]);
});

test('its hinge and the hinge’s screw must be on the rack', () => {
  expect(faults({ 'coat-door': { hinge: 'gate' } })).toEqual([
    'document.no-such-hinge design/records/coat-door/hinge',
  ]);
  expect(faults({ full: { screw: 'pocket-32' } })).toEqual([
    'document.no-such-screw shop/rack/hinges/full/screw',
  ]);
});

test('a door that has lost its list is told of that alone', () => {
  expect(faults({ 'coat-door': { over: undefined } })).toEqual([
    'document.missing-field design/records/coat-door/over',
  ]);
  expect(faults({ 'coat-door': { over: [] } })).toEqual([
    'document.unreadable-value design/records/coat-door/over',
  ]);
});
