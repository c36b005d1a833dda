import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inMm } from '../measure/index.ts';
import { partsReport, setOut } from '../setting-out/index.ts';
import { jobJsonSchema, readJob } from './index.ts';
import { DesignRecord } from './records/design-record.ts';
import { Tool } from './shop/tool.ts';

const page = (name: string) => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');

describe('the page on the job file', () => {
  const text = page('job-file.md');
  const example = /```json\n([\s\S]*?)```/.exec(text)?.[1] ?? '';

  test('its example is a job that sets out without a snag', () => {
    const read = readJob(example);
    if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
    const piece = setOut(read.job);
    expect(piece.snags).toEqual([]);
    expect(inMm(piece.ledger, partsReport(piece))).toMatchObject({
      overall_mm: { width: 900, height: 760, depth: 300 },
    });
    // Two sides, bottom, divider, two shelves, back, top, four strips of the base.
    expect(piece.parts).toHaveLength(12);
  });

  test('names every kind of record and tool, and every field of a record', () => {
    const named = new Set([...text.matchAll(/`([^`\n]+)`/g)].map((m) => m[1]));
    for (const { entries } of DesignRecord.options)
      for (const word of [entries.kind.literal, ...Object.keys(entries)]) expect(named, word).toContain(word);
    for (const { entries } of Tool.options)
      for (const word of [entries.kind.literal, ...Object.keys(entries)])
        if (word !== 'name') expect(named, word).toContain(word);
  });
});

describe('the published schema', () => {
  test('is that of the program (node --import @oxc-node/core/register scripts/write-schema.ts)', () => {
    expect(page('job.schema.json')).toBe(`${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
  });

  test('knows every kind of record, and no field beside those', () => {
    const schema = JSON.parse(page('job.schema.json'));
    const records = schema.properties.design.properties.records.items.oneOf;
    expect(
      records.map((r: { properties: { kind: { const: string } } }) => r.properties.kind.const).sort(),
    ).toEqual(DesignRecord.options.map((o) => o.entries.kind.literal).sort());
    for (const r of records) {
      expect(r.additionalProperties).toBe(false);
      // The program makes an id from the place where there is none.
      expect(r.required).toContain('kind');
      expect(r.required).not.toContain('id');
    }
  });
});
