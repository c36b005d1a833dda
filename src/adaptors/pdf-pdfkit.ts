import PDFDocument from 'pdfkit';
import {
  type Book,
  type BookPage,
  type Face,
  PENS,
  type Pen,
  type Stroke,
  strokesOf,
  TONES,
  type Tone,
} from '../book/index.ts';

/** The typeface of the book, as the bytes of TrueType files. */
export type BookFonts = Readonly<Record<Face, Uint8Array>>;

export interface PdfOptions {
  /** Off for comparing: compressed bytes differ between machines. On unless said otherwise. */
  readonly compress?: boolean;
}

const POINTS_PER_MM = 72 / 25.4;

function pt(mm: number): number {
  return mm * POINTS_PER_MM;
}

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
  doc.registerFont('regular', asMeasured(fonts.regular) as never);
  doc.registerFont('semibold', asMeasured(fonts.semibold) as never);
  preferences(doc);
  for (const page of book.pages) {
    doc.addPage({ size: [pt(page.width), pt(page.height)], margin: 0 });
    if (page.bookmark) doc.outline.addItem(page.bookmark);
    drawPage(doc, page);
  }
  doc.end();
  return done;
}

/** What moves or joins letters: kerning in its older and newer form, and ligatures. */
const MOVING = new Set(['kern', 'GPOS', 'GSUB']);

/**
 * A font that is set as the book is measured, by advance widths alone: its tables of kerning and ligatures go by a name that
 * nobody looks for. Words then end just where the layout has them, and are laid out in a fraction of the time.
 */
function asMeasured(font: Uint8Array): Uint8Array {
  // A copy, also of Node's buffers, whose own `slice` makes none.
  const bytes = new Uint8Array(font);
  const tables = new DataView(bytes.buffer).getUint16(4);
  for (let i = 0; i < tables; i++) {
    // The directory of a TrueType file: after 12 bytes an entry of 16 for each table, its name first (ISO/IEC 14496-22).
    const name = bytes.subarray(12 + i * 16, 16 + i * 16);
    if (MOVING.has(String.fromCharCode(...name))) name.fill(0x2d);
  }
  return bytes;
}

function drawPage(doc: PDFKit.PDFDocument, page: BookPage): void {
  const brush = new Brush(doc);
  const strokes = page.marks.flatMap(strokesOf);
  strokes.forEach((s, i) => {
    if (s.kind === 'text') drawText(doc, brush, s);
    else if (s.kind === 'line') {
      brush.use(s.pen, s.tone);
      doc.moveTo(pt(s.from[0]), pt(s.from[1])).lineTo(pt(s.to[0]), pt(s.to[1]));
      // Lines of one look that follow one another are stroked at once.
      const next = strokes[i + 1];
      if (next?.kind !== 'line' || next.pen !== s.pen || next.tone !== s.tone) doc.stroke();
    } else drawShape(doc, brush, s);
  });
}

function drawShape(doc: PDFKit.PDFDocument, brush: Brush, s: Stroke & { kind: 'circle' | 'polygon' }): void {
  if (s.kind === 'circle') doc.circle(pt(s.centre[0]), pt(s.centre[1]), pt(s.radius));
  else doc.polygon(...s.points.map(([x, y]) => [pt(x), pt(y)]));
  if (s.pen) brush.use(s.pen, s.tone ?? 'ink');
  if (s.fill) brush.fill(s.fill);
  if (s.fill && s.pen) doc.fillAndStroke();
  else if (s.fill) doc.fill();
  else if (s.pen) doc.stroke();
}

/** What lines and faces look like on a page just now: said only where it changes, which keeps the file small. */
class Brush {
  private readonly doc: PDFKit.PDFDocument;
  private pen: Pen | undefined;
  private tone: Tone | undefined;
  private filled: Tone | undefined;

  constructor(doc: PDFKit.PDFDocument) {
    this.doc = doc;
    doc.lineJoin('round');
  }

  use(pen: Pen, tone: Tone): void {
    if (pen !== this.pen) {
      const { width, dash } = PENS[pen];
      this.doc.lineWidth(pt(width));
      if (dash.length > 0) this.doc.lineCap('butt').dash(dash.map(pt) as never, {});
      else this.doc.lineCap('round').undash();
    }
    if (tone !== this.tone) this.doc.strokeColor(TONES[tone]);
    [this.pen, this.tone] = [pen, tone];
  }

  fill(tone: Tone): void {
    if (tone !== this.filled) this.doc.fillColor(TONES[tone]);
    this.filled = tone;
  }
}

function drawText(doc: PDFKit.PDFDocument, brush: Brush, s: Stroke & { kind: 'text' }): void {
  const [x, y] = [pt(s.at[0]), pt(s.at[1])];
  brush.fill(s.tone);
  doc.font(s.face).fontSize(pt(s.size));
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
