import { type Drawing, type Mark, PENS, type Stroke, strokesOf, TONES } from '../../book/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { SetOut } from '../../setting-out/index.ts';
import { useDesk } from '../state/use-desk.ts';

interface PictureProps {
  readonly drawing: Drawing;
  /** What it shows, for those who don't see it. */
  readonly label: string;
  /** Whose lengths its numbers are; without it numbers can't be asked. */
  readonly of?: SetOut;
  /** Screen pixels for a millimetre of the drawing; it fills its place when absent. */
  readonly pixels?: number;
}

/** A drawing of the book on the page. Every number in it tells where it comes from. */
export function DrawingPicture({ drawing, label, of, pixels }: PictureProps) {
  const size = pixels === undefined ? {} : { width: drawing.width * pixels, height: drawing.height * pixels };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with numbers to click can't be an img element
    <svg
      className="drawing"
      role="group"
      aria-label={label}
      viewBox={`0 0 ${round(drawing.width)} ${round(drawing.height)}`}
      {...size}
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      {drawing.marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is replaced as a whole
        <MarkPicture key={i} mark={mark} of={of} />
      ))}
    </svg>
  );
}

function MarkPicture({ mark, of }: { mark: Mark; of: SetOut | undefined }) {
  const strokes = strokesOf(mark);
  const trace = mark.kind === 'dimension' || mark.kind === 'text' ? mark.trace : undefined;
  // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is replaced as a whole
  const drawn = strokes.map((s, i) => <StrokePicture key={i} stroke={s} />);
  if (trace === undefined || of === undefined) return drawn;
  const label = strokes.find((s) => s.kind === 'text');
  return (
    <Asking of={of} trace={trace} words={label?.kind === 'text' ? label.text : ''}>
      {drawn}
    </Asking>
  );
}

function Asking(props: { of: SetOut; trace: Traced; words: string; children: React.ReactNode }) {
  const desk = useDesk();
  const ask = () => desk.ask(props.of, props.trace);
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button
    <g
      className="asking"
      role="button"
      tabIndex={0}
      data-trace={props.trace}
      aria-label={`${props.words}, where this comes from`}
      onClick={ask}
      onKeyDown={(e) => {
        if (e.key !== 'Enter' && e.key !== ' ') return;
        e.preventDefault();
        ask();
      }}
    >
      {props.children}
    </g>
  );
}

function StrokePicture({ stroke: s }: { stroke: Stroke }) {
  if (s.kind === 'text') return <TextPicture text={s} />;
  const pen = s.pen ? PENS[s.pen] : undefined;
  const look = {
    stroke: pen ? paint(s.tone ?? 'ink') : 'none',
    strokeWidth: pen?.width,
    fill: s.kind !== 'line' && s.fill ? paint(s.fill) : 'none',
    ...(pen && pen.dash.length > 0
      ? { strokeDasharray: pen.dash.join(' '), strokeLinecap: 'butt' as const }
      : {}),
  };
  if (s.kind === 'line') {
    const [[x1, y1], [x2, y2]] = [s.from.map(round), s.to.map(round)] as [number[], number[]];
    return <line {...{ x1, y1, x2, y2 }} {...look} />;
  }
  if (s.kind === 'circle')
    return <circle cx={round(s.centre[0])} cy={round(s.centre[1])} r={s.radius} {...look} />;
  return <polygon points={s.points.map((p) => p.map(round).join()).join(' ')} {...look} />;
}

function TextPicture({ text: s }: { text: Stroke & { kind: 'text' } }) {
  const [x, y] = [round(s.at[0]), round(s.at[1])];
  return (
    <text
      x={x}
      y={y}
      fontSize={s.size}
      fontWeight={s.face === 'semibold' ? 600 : 400}
      textAnchor={s.anchor}
      fill={paint(s.tone)}
      transform={s.upright ? `rotate(-90 ${x} ${y})` : undefined}
    >
      {s.text}
    </text>
  );
}

/** The book's colours, but its white paper is the page's. */
function paint(tone: keyof typeof TONES): string {
  return tone === 'paper' ? 'var(--paper)' : TONES[tone];
}

function round(x: number): number {
  return Math.round(x * 1000) / 1000;
}
