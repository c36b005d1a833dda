import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generatedJobs } from '../../test/generate/design.ts';
import { frozen, smallJob } from '../../test/generate/small-job.ts';
import {
  applyEdit,
  checkJob,
  type DesignRecord,
  type Edit,
  inverseOf,
  type JobDocument,
  readPlace,
} from './index.ts';

function jobOf(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return frozen(read.job);
}

function applied(job: JobDocument, edit: Edit): JobDocument {
  const edited = applyEdit(job, edit);
  if (!edited.ok) throw new Error(edited.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return edited.job;
}

/**
 * The law of edits: an edit does what it says and touches nothing but its result; its inverse leads back to the
 * start, to the letter; and both do the same after a trip through JSON. The job is frozen, so a touch would throw.
 */
function holdsTo(job: JobDocument, edit: Edit, expected?: (after: JobDocument) => unknown): void {
  const text = JSON.stringify(job);
  const back = inverseOf(job, frozen(edit));
  const after = applied(job, edit);
  expect(JSON.stringify(job)).toBe(text);
  if (expected) expected(after);
  const sent = (e: Edit): Edit => JSON.parse(JSON.stringify(e));
  expect(JSON.stringify(applied(job, sent(edit)))).toBe(JSON.stringify(after));
  const again = applied(frozen(after), sent(back));
  expect(again).toEqual(job);
  expect(JSON.stringify(again)).toBe(text);
  expect(applied(again, edit)).toEqual(after);
  // Going back can be undone as well.
  expect(applied(again, sent(inverseOf(after, back)))).toEqual(after);
}

const job = jobOf(smallJob());

describe('one edit', () => {
  test('sets a field', () => {
    holdsTo(job, { edit: 'set', at: 'design/records/cupboard/width', value: '1200 mm' }, (after) => {
      expect(readPlace(after, 'design/records/cupboard/width')).toBe('1200 mm');
      expect(readPlace(after, 'design/records/cupboard/height')).toBe('800 mm');
    });
  });

  test('sets a field that was absent', () => {
    holdsTo(job, { edit: 'set', at: 'design/records/top/overhangFront', value: '10 mm' });
  });

  test('takes a field away; put back, it stands where it stood', () => {
    holdsTo(job, { edit: 'set', at: 'design/records/shelves/count' }, (after) => {
      expect('count' in after.design.records.find((r) => r.id === 'shelves')!).toBe(false);
    });
  });

  test('measures a lot', () => {
    holdsTo(job, { edit: 'set', at: 'shop/rack/lots/birch18/thickness', value: '17.6 mm' });
  });

  test('adds a record in the middle', () => {
    const record: DesignRecord = { id: 'third', kind: 'shelf', parent: 'right', at: '500 mm' };
    holdsTo(job, { edit: 'add', record, position: 3 }, (after) => {
      expect(after.design.records[3]!.id).toBe('third');
      expect(after.design.records).toHaveLength(job.design.records.length + 1);
    });
  });

  test('removes a record', () => {
    holdsTo(job, { edit: 'remove', id: 'shelf' }, (after) => {
      expect(readPlace(after, 'design/records/shelf')).toBeUndefined();
    });
  });

  test('several as one step: a bay is added with its divider', () => {
    const of: Edit[] = [
      { edit: 'remove', id: 'upright' },
      {
        edit: 'add',
        record: { id: 'middle', kind: 'opening', parent: 'inside', size: '2 shares' },
        position: 4,
      },
      { edit: 'set', at: 'design/records/middle/size', value: '300 mm' },
      { edit: 'set', at: 'design/records/left/size' },
    ];
    holdsTo(job, { edit: 'all', of });
  });
});

describe('an edit that may not be', () => {
  const refused = (edit: Edit) => {
    const text = JSON.stringify(job);
    const edited = applyEdit(job, edit);
    expect(JSON.stringify(job)).toBe(text);
    return edited.ok || edited.snags.map((s) => `${s.code} ${s.where.path}`);
  };

  test.each<[string, Edit, string]>([
    [
      'a size of nothing',
      { edit: 'set', at: 'design/records/cupboard/width', value: '0 mm' },
      'document.unreadable-value design/records/cupboard/width',
    ],
    [
      'a field that is needed taken away',
      { edit: 'set', at: 'design/records/cupboard/width' },
      'document.missing-field design/records/cupboard/width',
    ],
    [
      'a place that is not there',
      { edit: 'set', at: 'design/records/attic/width', value: '1 mm' },
      'edit.no-such-place design/records/attic/width',
    ],
    [
      'a record that is not there',
      { edit: 'remove', id: 'attic' },
      'edit.no-such-place design/records/attic',
    ],
    [
      'a record that others belong to',
      { edit: 'remove', id: 'left' },
      'document.no-such-record design/records/shelves/parent',
    ],
    [
      'a record of an id that is taken',
      { edit: 'add', record: { id: 'shelf', kind: 'shelf', parent: 'left' } },
      'document.repeated-id design/records/shelf',
    ],
    [
      'a prototype',
      { edit: 'set', at: 'design/__proto__/x', value: 1 },
      'edit.no-such-place design/__proto__/x',
    ],
    // An id is what the way back finds a record by.
    [
      'another id for a record',
      { edit: 'set', at: 'design/records/lipping/id', value: 'edge' },
      'edit.no-such-place design/records/lipping/id',
    ],
  ])('%s', (_, edit, expected) => {
    expect(refused(edit)).toContain(expected);
  });

  test('a step of several is made whole or not at all', () => {
    const edit: Edit = {
      edit: 'all',
      of: [
        { edit: 'set', at: 'design/records/cupboard/width', value: '900 mm' },
        { edit: 'remove', id: 'attic' },
      ],
    };
    expect(applyEdit(job, edit).ok).toBe(false);
  });
});

describe('the law of edits', () => {
  const fields: readonly (readonly [field: string, values: readonly unknown[]])[] = [
    ['width', ['900 mm', '36"', '1 m']],
    ['height', ['700 mm', '2\' 6"']],
    ['count', [undefined, 1, 3]],
    ['at', [undefined, '120 mm']],
    ['size', [undefined, 'equal', '2 shares', '200 mm']],
    ['load', [undefined, '12 kg', '30 lb']],
    ['setback', [undefined, '5 mm', '0 mm']],
    ['board', ['board', 'other']],
    ['order', [undefined, -1, 0, 2.5]],
    ['overhangFront', [undefined, '12 mm']],
    ['fitting', ['rabbet', 'applied']],
    ['split', ['across', 'down']],
    ['name', ['Another']],
  ];
  const change: fc.Arbitrary<(job: JobDocument) => Edit> = fc.oneof(
    fc
      .tuple(fc.nat(), fc.constantFrom(...fields), fc.nat())
      .map(([n, [field, values], k]) => (at: JobDocument): Edit => {
        const record = at.design.records[n % at.design.records.length]!;
        const value = values[k % values.length];
        const place = `design/records/${record.id}/${field}`;
        return value === undefined ? { edit: 'set', at: place } : { edit: 'set', at: place, value };
      }),
    fc.nat().map(
      (n) =>
        (at: JobDocument): Edit => ({
          edit: 'remove',
          id: at.design.records[n % at.design.records.length]!.id,
        }),
    ),
    fc
      .tuple(fc.nat(), fc.nat(), fc.integer({ min: -2, max: 40 }))
      .map(([n, id, position]) => (at: JobDocument): Edit => {
        const parent = at.design.records[n % at.design.records.length]!.id;
        return { edit: 'add', record: { id: `new${id}`, kind: 'shelf', parent, at: '90 mm' }, position };
      }),
    fc.constantFrom('thickness', 'trim', 'grain').map((field) => (): Edit => {
      const value = { thickness: '16.4 mm', trim: '5 mm', grain: 'free' }[field];
      return { edit: 'set', at: `shop/rack/lots/other/${field}`, value };
    }),
  );

  test('holds for generated edits, one by one and as one step', () => {
    let made = 0;
    fc.assert(
      fc.property(
        generatedJobs,
        fc.array(change, { minLength: 1, maxLength: 8 }),
        ({ document }, changes) => {
          let at = jobOf(document);
          const start = at;
          const of: Edit[] = [];
          for (const next of changes) {
            const edit = next(at);
            const edited = applyEdit(at, edit);
            if (!edited.ok) {
              expect(edited.snags.length).toBeGreaterThan(0);
              continue;
            }
            holdsTo(at, edit);
            made++;
            of.push(edit);
            at = frozen(edited.job);
          }
          holdsTo(start, { edit: 'all', of }, (after) => expect(after).toEqual(at));
        },
      ),
      { seed: 6, numRuns: 150 },
    );
    expect(made).toBeGreaterThan(100);
  });
});
