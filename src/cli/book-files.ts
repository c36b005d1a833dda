import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { writePdf } from '../adaptors/pdf-pdfkit.ts';
import { book, bookInputOf, cuttingListCsv } from '../book/index.ts';
import { formatOf } from '../job/index.ts';
import type { Plan } from '../plan/index.ts';

/** The files of a plan book: the book itself and the cutting list. */
export async function bookFiles(
  plan: Plan,
): Promise<readonly (readonly [name: string, bytes: Uint8Array | string])[]> {
  const pdf = await writePdf(book(bookInputOf(plan)), {
    regular: await font('400Regular'),
    semibold: await font('600SemiBold'),
  });
  return [
    ['book.pdf', pdf],
    ['cutting-list.csv', cuttingListCsv(plan, formatOf(plan.job.shop))],
  ];
}

function font(cut: string): Promise<Uint8Array> {
  const require = createRequire(import.meta.url);
  return readFile(require.resolve(`@expo-google-fonts/ibm-plex-sans/${cut}/IBMPlexSans_${cut}.ttf`));
}
