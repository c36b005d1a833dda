import PDFDocument from 'pdfkit';
import { type Book, type BookPage, type Face, PENS, type Stroke, strokesOf, TONES } from '../book/index.ts';

/** The typeface of the book, as the bytes of TrueType files. */
export type BookFonts = Readonly<Record<Face, Uint8Array>>;

export interface PdfOptions {
  /** Off for comparing: compressed bytes differ between machines. On unless said otherwise. */
  readonly compress?: boolean;
}

const POINTS_PER_MM = 72 / 25.4;
/** Every file bears the same date, so that the same book gives the same bytes. */
const DATE = new Date(Date.UTC(2000, 0, 1));

/**
 * A book as a PDF: vectors, fonts embedded, bookmarks, true to size (viewers are told not to scale it in printing).
 * Runs in Node and in a browser. The same book and fonts give the same bytes, uncompressed on every machine.
 */
export function writePdf(book: Book, fonts: BookFonts, options: PdfOptions = {}): Promise<Uint8Array> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    compress: options.compress ?? true,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    margin: 0,
    // No default font: the browser build comes without the standard fonts.
    font: null as never,
    info: {
      Title: book.title,
      Creator: 'Casewright',
      Producer: 'Casewright',
      CreationDate: DATE,
      ModDate: DATE,
    },
  });
  const done = collect(doc);
  doc.registerFont('regular', fonts.regular as never);
  doc.registerFont('semibold', fonts.semibold as never);
  preferences(doc);
  for (const page of book.pages) {
    doc.addPage({ size: [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM], margin: 0 });
    if (page.bookmark) doc.outline.addItem(page.bookmark);
    drawPage(doc, page);
  }
  doc.end();
  return done;
}

function drawPage(doc: PDFKit.PDFDocument, page: BookPage): void {
  doc.lineCap('round').lineJoin('round');
  for (const mark of page.marks) for (const s of strokesOf(mark)) drawStroke(doc, s);
}

function drawStroke(doc: PDFKit.PDFDocument, s: Stroke): void {
  const pt = (mm: number) => mm * POINTS_PER_MM;
  if (s.kind === 'text') {
    drawText(doc, s);
    return;
  }
  if (s.kind === 'line') doc.moveTo(pt(s.from[0]), pt(s.from[1])).lineTo(pt(s.to[0]), pt(s.to[1]));
  else if (s.kind === 'circle') doc.circle(pt(s.centre[0]), pt(s.centre[1]), pt(s.radius));
  else doc.polygon(...s.points.map(([x, y]) => [pt(x), pt(y)]));
  const pen = s.pen ? PENS[s.pen] : undefined;
  if (pen) {
    doc.lineWidth(pt(pen.width)).strokeColor(TONES[s.tone ?? 'ink']);
    if (pen.dash.length > 0) doc.lineCap('butt').dash(pen.dash.map(pt) as never, {});
    else doc.lineCap('round').undash();
  }
  const fill = s.kind === 'line' || !s.fill ? undefined : TONES[s.fill];
  if (fill && pen) doc.fillAndStroke(fill, TONES[s.kind === 'line' ? 'ink' : (s.tone ?? 'ink')]);
  else if (fill) doc.fill(fill);
  else if (pen) doc.stroke();
}

function drawText(doc: PDFKit.PDFDocument, s: Stroke & { kind: 'text' }): void {
  const [x, y] = [s.at[0] * POINTS_PER_MM, s.at[1] * POINTS_PER_MM];
  doc
    .font(s.face)
    .fontSize(s.size * POINTS_PER_MM)
    .fillColor(TONES[s.tone]);
  const part = { start: 0, middle: 0.5, end: 1 }[s.anchor];
  const before = part === 0 ? 0 : doc.widthOfString(s.text) * part;
  const write = () => doc.text(s.text, x - before, y, { lineBreak: false, baseline: 'alphabetic' });
  if (!s.upright) write();
  else {
    doc.save().rotate(-90, { origin: [x, y] });
    write();
    doc.restore();
  }
}

/** Viewers print true to size and show the table of contents. pdfkit has no call for the first. */
function preferences(doc: PDFKit.PDFDocument): void {
  const root = (doc as unknown as { _root: { data: Record<string, unknown> } })._root.data;
  root.ViewerPreferences = doc.ref({ PrintScaling: 'None', DisplayDocTitle: true });
  (root.ViewerPreferences as unknown as { end(): void }).end();
}

function collect(doc: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (c: Uint8Array) => chunks.push(c));
    doc.on('error', reject);
    doc.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((n, c) => n + c.length, 0));
      let at = 0;
      for (const c of chunks) {
        whole.set(c, at);
        at += c.length;
      }
      resolve(whole);
    });
  });
}
