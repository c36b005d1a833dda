import { readFile } from 'node:fs/promises';
import { type JobDocument, readJob } from '../job/index.ts';
import type { Snag } from '../snag/index.ts';
import type { Given } from './command.ts';
import { BadInput } from './output.ts';

/** Reads the job a command is called with, in the shop of `--shop` if that is given. */
export async function jobOf(given: Given): Promise<JobDocument> {
  const { name, text } = await jobTextOf(given);
  return accept(name, text);
}

/** The text of the job a command is called with, in the shop of `--shop`, and what to call it in a message. */
export async function jobTextOf(given: Given): Promise<{ readonly name: string; readonly text: string }> {
  const file = given.arguments[0]!;
  const text = await textOf(file);
  const shop = given.options.shop;
  if (typeof shop !== 'string') return { name: file, text };
  const job = jsonOf(file, text);
  if (typeof job !== 'object' || job === null || Array.isArray(job)) return { name: file, text };
  const withShop = { ...job, shop: shopOf(jsonOf(shop, await textOf(shop))) };
  return { name: `${file} with the shop of ${shop}`, text: JSON.stringify(withShop) };
}

/** The text of a file; what can't be read is told in a sentence. */
export async function textOf(file: string): Promise<string> {
  try {
    // Some editors put a byte order mark in front, which is no part of the text.
    return (await readFile(file, 'utf8')).replace(/^\uFEFF/, '');
  } catch (e) {
    const code = e instanceof Error && 'code' in e ? e.code : undefined;
    if (code === 'ENOENT') throw new BadInput(`There is no file “${file}”.`);
    if (code === 'EISDIR') throw new BadInput(`“${file}” is a folder; a file is needed.`);
    throw new BadInput(`“${file}” can’t be read: ${e instanceof Error ? e.message : e}`);
  }
}

/** A file's JSON. */
export function jsonOf(file: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (e) {
    throw new BadInput(`“${file}” is not JSON: ${e instanceof Error ? e.message : e}`);
  }
}

/** A shop file holds a shop, or a whole job whose shop is meant. */
export function shopOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null && 'shop' in json ? json.shop : json;
}

function accept(file: string, text: string): JobDocument {
  const read = readJob(text);
  if (!read.ok) throw new BadInput(`${file}:\n${faults(read.snags)}`);
  return read.job;
}

/** Everything that is wrong with a file, one line each. */
export function faults(snags: readonly Snag[]): string {
  return snags
    .map((s) =>
      `  ${s.where.path ? `${s.where.path}: ` : ''}${s.sentence} ${s.cures[0]?.says ?? ''}`.trimEnd(),
    )
    .join('\n');
}
