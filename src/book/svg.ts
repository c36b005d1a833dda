import { type Drawing, type Line, type Mark, type Stroke, strokesOf, type Text } from './drawing.ts';
import { PENS, TONES } from './pens.ts';
import { PLEX } from './text-measure.ts';

/**
 * A drawing as SVG text, in millimetres. The same drawing gives the same bytes. What shows a traced length carries
 * its ledger index in `data-trace`.
 */
export function toSvg(drawing: Drawing): string {
  const { width, height } = drawing;
  const head =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" ` +
    `viewBox="0 0 ${n(width)} ${n(height)}" font-family="'IBM Plex Sans', sans-serif" stroke-linecap="round" stroke-linejoin="round">`;
  return `${[head, ...drawing.marks.map(markSvg), '</svg>'].join('\n')}\n`;
}

function markSvg(mark: Mark): string {
  if (mark.kind !== 'dimension') return strokeSvg(mark);
  const inner = strokesOf(mark).map(strokeSvg).join('');
  return `<g class="dimension" data-trace="${mark.trace}">${inner}</g>`;
}

function strokeSvg(s: Stroke): string {
  if (s.kind === 'line') return lineSvg(s);
  if (s.kind === 'text') return textSvg(s);
  const look = `${s.fill ? `fill="${TONES[s.fill]}"` : 'fill="none"'}${penSvg(s.pen, s.tone)}`;
  if (s.kind === 'circle')
    return `<circle cx="${n(s.centre[0])}" cy="${n(s.centre[1])}" r="${n(s.radius)}" ${look}/>`;
  return `<polygon points="${s.points.map((p) => `${n(p[0])},${n(p[1])}`).join(' ')}" ${look}/>`;
}

function lineSvg(s: Line): string {
  const [x1, y1] = s.from;
  const [x2, y2] = s.to;
  return `<line x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}"${penSvg(s.pen, s.tone)}/>`;
}

function textSvg(s: Text): string {
  const [x, y] = s.at;
  const turn = s.upright ? ` transform="rotate(-90 ${n(x)} ${n(y)})"` : '';
  const anchor = s.anchor === 'start' ? '' : ` text-anchor="${s.anchor}"`;
  const weight = s.face === 'semibold' ? ' font-weight="600"' : '';
  const trace = s.trace === undefined ? '' : ` data-trace="${s.trace}"`;
  // The width that the layout reckoned with, so that another typeface doesn't spoil it.
  const wide = ` textLength="${n(PLEX.width(s.text.trim(), s.size, s.face))}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${n(x)}" y="${n(y)}" font-size="${n(s.size)}"${weight}${anchor}${wide} fill="${TONES[s.tone]}"${turn}${trace}>${escaped(s.text)}</text>`;
}

function penSvg(pen: Line['pen'] | undefined, tone: Line['tone'] | undefined): string {
  if (!pen) return '';
  const { width, dash } = PENS[pen];
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}" stroke-linecap="butt"` : '';
  return ` stroke="${TONES[tone ?? 'ink']}" stroke-width="${width}"${dashes}`;
}

/** A number to three places, without trailing noughts and without a negative nought. */
function n(x: number): string {
  const r = Math.round(x * 1000) / 1000;
  return `${r === 0 ? 0 : r}`;
}

function escaped(s: string): string {
  return s.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}
