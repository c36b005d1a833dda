import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generatedJobs } from '../../test/generate/design.ts';
import { frozen, lotOf, type PlainJob, recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob, readJob } from './index.ts';

/** The faults of the small job after a change, as `code path`. The value is frozen: nothing may touch it. */
function faults(change: (job: PlainJob) => void): string[] {
  const job = smallJob();
  change(job);
  const read = checkJob(frozen(job));
  if (read.ok) return [];
  for (const snag of read.snags) {
    expect(snag.level).toBe('stop');
    expect(snag.sentence).toMatch(/^\S.*\.$/);
    expect(snag.cures.length).toBeGreaterThan(0);
    expect(snag.sentence).not.toMatch(/undefined|\[object/);
  }
  return read.snags.map((s) => `${s.code} ${s.where.path}`);
}

test('the small job is sound', () => {
  expect(faults(() => {})).toEqual([]);
});

describe('each fault is told with its path', () => {
  const cases: readonly [name: string, change: (job: PlainJob) => void, ...expected: string[]][] = [
    [
      'an unknown field of a record',
      (j) => {
        recordOf(j, 'top').overhang = '20 mm';
      },
      'document.unknown-field design/records/top/overhang',
    ],
    [
      'several unknown fields of one record',
      (j) => Object.assign(recordOf(j, 'top'), { colour: 'red', shine: 1 }),
      'document.unknown-field design/records/top/colour',
      'document.unknown-field design/records/top/shine',
    ],
    [
      'an unknown field of the document',
      (j) => Object.assign(j, { colour: 1 }),
      'document.unknown-field colour',
    ],
    [
      'an unknown field of a lot',
      (j) => Object.assign(lotOf(j, 'birch18'), { colour: 1 }),
      'document.unknown-field shop/rack/lots/birch18/colour',
    ],
    [
      'a missing field',
      (j) => {
        delete recordOf(j, 'cupboard').width;
      },
      'document.missing-field design/records/cupboard/width',
    ],
    ['a missing shop', (j) => Reflect.deleteProperty(j, 'shop'), 'document.missing-field shop'],
    [
      'an unreadable length',
      (j) => {
        recordOf(j, 'cupboard').width = '1 metre and a bit';
      },
      'document.unreadable-value design/records/cupboard/width',
    ],
    [
      'a length as a number',
      (j) => {
        recordOf(j, 'cupboard').width = 1000;
      },
      'document.wrong-value design/records/cupboard/width',
    ],
    [
      'a negative size',
      (j) => {
        recordOf(j, 'cupboard').depth = '-350 mm';
      },
      'document.unreadable-value design/records/cupboard/depth',
    ],
    [
      'a size of nothing',
      (j) => {
        recordOf(j, 'base').height = '0 mm';
      },
      'document.unreadable-value design/records/base/height',
    ],
    [
      'a negative overhang',
      (j) => {
        recordOf(j, 'top').overhangSides = '-1 mm';
      },
      'document.unreadable-value design/records/top/overhangSides',
    ],
    [
      'an unreadable load',
      (j) => {
        recordOf(j, 'shelves').load = 'heavy';
      },
      'document.unreadable-value design/records/shelves/load',
    ],
    [
      'half a share too few letters',
      (j) => {
        recordOf(j, 'left').size = '2 shars';
      },
      'document.unreadable-value design/records/left/size',
    ],
    [
      'no whole number of shelves',
      (j) => {
        recordOf(j, 'shelves').count = 1.5;
      },
      'document.wrong-value design/records/shelves/count',
    ],
    [
      'an unknown kind',
      (j) => {
        recordOf(j, 'lipping').kind = 'ornament';
      },
      'document.wrong-value design/records/lipping/kind',
    ],
    [
      'an unknown fitting',
      (j) => {
        recordOf(j, 'back').fitting = 'nailed';
      },
      'document.wrong-value design/records/back/fitting',
    ],
    [
      'an id with a slash',
      (j) => {
        recordOf(j, 'lipping').id = 'a/b';
      },
      'document.unreadable-value design/records/a/b/id',
    ],
    [
      'records that belong to each other',
      (j) => {
        recordOf(j, 'inside').parent = 'left';
      },
      'document.circular design/records/inside/parent',
      'document.circular design/records/left/parent',
      'design.not-split design/records/left',
    ],
    [
      'a record that belongs to itself',
      (j) => {
        recordOf(j, 'inside').parent = 'inside';
      },
      'document.circular design/records/inside/parent',
      'design.divider-count design/records/inside',
    ],
    [
      'a parent that is not there',
      (j) => {
        recordOf(j, 'shelf').parent = 'middle';
      },
      'document.no-such-record design/records/shelf/parent',
    ],
    [
      'a lot that is not there',
      (j) => {
        recordOf(j, 'case').board = 'walnut';
      },
      'document.no-such-lot design/records/case/board',
    ],
    [
      'strips where a sheet is needed',
      (j) => {
        recordOf(j, 'base').board = 'ash6';
      },
      'document.wrong-form design/records/base/board',
    ],
    [
      'a sheet where strips are needed',
      (j) => {
        recordOf(j, 'top').edging = 'birch6';
      },
      'document.wrong-form design/records/top/edging',
    ],
    [
      'a parent of the wrong kind',
      (j) => {
        recordOf(j, 'shelf').parent = 'case';
      },
      'design.wrong-parent design/records/shelf/parent',
    ],
    [
      'a split of one',
      (j) => {
        j.design.records = j.design.records.filter(
          (r) => !['right', 'shelf', 'upright'].includes(String(r.id)),
        );
      },
      'design.split-of-one design/records/inside',
    ],
    [
      'openings in an opening that is not split',
      (j) => {
        delete recordOf(j, 'inside').split;
      },
      'design.not-split design/records/inside',
    ],
    [
      'a shelf in an opening that is split',
      (j) => {
        recordOf(j, 'shelf').parent = 'inside';
      },
      'design.shelf-in-split design/records/inside',
    ],
    [
      'too many dividers',
      (j) => {
        j.design.records.push({ id: 'second', kind: 'divider', parent: 'inside' });
      },
      'design.divider-count design/records/inside',
    ],
    [
      'two backs',
      (j) => {
        j.design.records.push({ ...recordOf(j, 'back'), id: 'back2' });
      },
      'design.too-many design/records/case',
    ],
    [
      'two pieces',
      (j) => {
        j.design.records.push({ ...recordOf(j, 'cupboard'), id: 'other' });
      },
      'design.one-piece design/records',
    ],
    [
      'several shelves at one height',
      (j) => {
        recordOf(j, 'shelves').at = '100 mm';
      },
      'design.shelf-at-and-count design/records/shelves/at',
    ],
    [
      'more openings than a split has',
      (j) => {
        recordOf(j, 'upright').parent = 'left';
        for (let n = 0; n < 60; n++)
          j.design.records.push({ id: `o${n}`, kind: 'opening', parent: 'inside' });
        j.design.records = j.design.records.filter((r) => r.id !== 'upright');
      },
      'design.too-many-openings design/records/inside',
    ],
    [
      'an id used twice',
      (j) => {
        recordOf(j, 'lipping').id = 'base';
      },
      'document.repeated-id design/records/base',
    ],
    [
      'a lot’s id used twice',
      (j) => {
        lotOf(j, 'birch6').id = 'ash6';
        recordOf(j, 'back').board = 'birch18';
        recordOf(j, 'lipping').strip = 'ash18';
      },
      'document.repeated-id shop/rack/lots/ash6',
    ],
    [
      'a sheet without a width',
      (j) => {
        delete lotOf(j, 'birch18').stock[0]!.width;
      },
      'document.missing-field shop/rack/lots/birch18/stock/birch18-sheet/width',
    ],
    [
      'strips without a width',
      (j) => {
        delete lotOf(j, 'ash6').width;
      },
      'document.missing-field shop/rack/lots/ash6/width',
    ],
    [
      'a lot without stock',
      (j) => {
        lotOf(j, 'birch6').stock = [];
      },
      'document.unreadable-value shop/rack/lots/birch6/stock',
    ],
    [
      'a tool of no kind',
      (j) => {
        delete j.shop.tools[0]!.kind;
      },
      'document.missing-field shop/tools/drill/kind',
    ],
    [
      'a piece of sixteen metres',
      (j) => {
        recordOf(j, 'cupboard').width = '16 m';
      },
      'document.too-long design/records/cupboard/width',
    ],
    [
      'millimetres typed in a shop of inches',
      (j) => {
        j.shop.units = 'in';
        recordOf(j, 'cupboard').width = '1000';
      },
      'document.too-long design/records/cupboard/width',
    ],
    [
      'a board thicker than any',
      (j) => {
        lotOf(j, 'birch18').nominal = '18 m';
      },
      'document.too-long shop/rack/lots/birch18/nominal',
    ],
  ];

  test.each(cases)('%s', (_, change, ...expected) => {
    expect(faults(change)).toEqual(expected);
  });
});

describe('the file as a whole', () => {
  test('everything that is wrong is told at once: form, references, structure', () => {
    const found = faults((j) => {
      Object.assign(recordOf(j, 'top'), { colour: 'red', shine: 2, overhangSides: '-1 mm' });
      recordOf(j, 'cupboard').width = 'wide';
      recordOf(j, 'shelves').parent = 'nowhere';
      recordOf(j, 'shelf').parent = 'case';
      recordOf(j, 'case').board = 'walnut';
      recordOf(j, 'inside').parent = 'left';
      lotOf(j, 'birch6').nominal = '-6 mm';
      j.design.records.push({ id: 'lipping', kind: 'edging', parent: 'case', strip: 'ash6' });
    });
    expect(found.sort()).toEqual([
      'design.not-split design/records/left',
      'design.too-many design/records/case',
      'design.wrong-parent design/records/shelf/parent',
      'document.circular design/records/inside/parent',
      'document.circular design/records/left/parent',
      'document.no-such-lot design/records/case/board',
      'document.no-such-record design/records/shelves/parent',
      'document.repeated-id design/records/lipping',
      'document.unknown-field design/records/top/colour',
      'document.unknown-field design/records/top/shine',
      'document.unreadable-value design/records/top/overhangSides',
      'document.unreadable-value shop/rack/lots/birch6/nominal',
      'formula.no-such-name design/records/cupboard/width',
    ]);
  });

  test('what can’t be read is no reason to call what refers to it wrong', () => {
    expect(
      faults((j) => {
        recordOf(j, 'inside').kind = 'hole';
        lotOf(j, 'birch18').form = 'roll';
      }),
    ).toEqual([
      'document.wrong-value design/records/inside/kind',
      'document.wrong-value shop/rack/lots/birch18/form',
    ]);
    expect(
      faults((j) => {
        recordOf(j, 'inside').split = 'sideways';
      }),
    ).toEqual(['document.wrong-value design/records/inside/split']);
  });

  test('a newer version is told as such, and alone', () => {
    expect(faults((j) => Object.assign(j, { version: 2, colour: 1 }))).toEqual([
      'document.newer-version version',
    ]);
    expect(faults((j) => Object.assign(j, { version: 0 }))).toEqual(['document.wrong-value version']);
    expect(faults((j) => Object.assign(j, { version: '1' }))).toEqual(['document.wrong-value version']);
  });

  test('text that is not JSON', () => {
    for (const text of ['', '{', '{ "version": 1, }', 'version: 1']) {
      const read = readJob(text);
      expect(read.ok || read.snags.map((s) => s.code)).toEqual(['document.not-json']);
    }
  });

  test.each([null, 1, 'job', [], true].map((v) => [JSON.stringify(v), v]))('%s is no job', (_, value) => {
    const read = checkJob(value);
    expect(read.ok).toBe(false);
  });

  test('a field called __proto__ is unknown like any other', () => {
    const read = readJob(JSON.stringify(smallJob()).replace('"work":{}', '"work":{},"__proto__":{"a":1}'));
    expect(read.ok || read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
      'document.unknown-field __proto__',
    ]);
  });

  test('any JSON at all is read or refused, never thrown over', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('design', 'shop', 'work', 'version'), (value, field) => {
        expect(checkJob(value).ok).toBe(false);
        const job = { ...smallJob(), [field]: value };
        const read = checkJob(frozen(job));
        expect(read.ok || read.snags.length > 0).toBe(true);
      }),
      { seed: 3 },
    );
  });

  test('any value at any place is read or refused, never thrown over', () => {
    const paths: (readonly string[])[] = [];
    const walk = (value: unknown, path: readonly string[]) => {
      if (path.length) paths.push(path);
      if (typeof value === 'object' && value !== null)
        for (const [k, inner] of Object.entries(value)) walk(inner, [...path, k]);
    };
    walk(smallJob(), []);
    const wrong = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom('inside', 'birch18', '1 mm', '9999', 'equal', 'opening'),
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), wrong, (path, value) => {
        const job: unknown = smallJob();
        let at = job as Record<string, unknown>;
        for (const step of path.slice(0, -1)) at = at[step] as Record<string, unknown>;
        at[path.at(-1)!] = value;
        const read = checkJob(frozen(job));
        expect(read.ok || read.snags.length > 0).toBe(true);
      }),
      { seed: 4, numRuns: 1000 },
    );
  });

  test('what is read is the document, and reading it again changes nothing', () => {
    fc.assert(
      fc.property(generatedJobs, ({ document }) => {
        const read = checkJob(frozen(document));
        if (!read.ok) throw new Error('refused');
        expect(read.job).toEqual(document);
        const text = JSON.stringify(read.job);
        const again = readJob(text);
        expect(again.ok && JSON.stringify(again.job)).toBe(text);
      }),
      { seed: 5 },
    );
  });
});

describe('records without an id', () => {
  test('get one from their place, numbered where there are several', () => {
    const job = smallJob();
    for (const id of ['shelf', 'shelves', 'lipping']) delete recordOf(job, id).id;
    job.design.records.push({ kind: 'shelf', parent: 'left', at: '50 mm' });
    const read = checkJob(frozen(job));
    if (!read.ok) throw new Error('refused');
    const ids = read.job.design.records.map((r) => r.id);
    expect(ids.slice(-6)).toEqual(['right.shelf', 'back', 'top', 'base', 'case.edging', 'left.shelf.2']);
    expect(ids).toContain('left.shelf');
  });

  test('an id that is taken is not given again', () => {
    const job = smallJob();
    recordOf(job, 'base').id = 'case.edging';
    delete recordOf(job, 'lipping').id;
    const read = checkJob(job);
    expect(read.ok && read.job.design.records.at(-1)!.id).toBe('case.edging.2');
  });
});

test('a number out of its range is told in words, without signs', () => {
  const job = smallJob();
  recordOf(job, 'shelves').count = -2;
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => s.sentence)).toEqual([
    '“count” should be 1 or more, but is -2.',
  ]);
});

test('a list with nothing in it wants an entry, not a size', () => {
  const job = smallJob();
  Object.assign(job.shop, { hours: [] });
  lotOf(job, 'birch18').stock = [];
  recordOf(job, 'cupboard').width = '1 metre and a bit';
  const read = checkJob(job);
  const cures = read.ok ? [] : read.snags.map((s) => `${s.where.path}: ${s.cures[0]!.says}`);
  expect(cures).toHaveLength(3);
  for (const cure of cures)
    expect(cure.includes('590 mm')).toBe(cure.startsWith('design/records/cupboard/width'));
});
