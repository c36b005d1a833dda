import type { Breakdown } from '../breakdown/index.ts';
import type { BuildPlan } from '../build/index.ts';
import type { Care, DryFitInput } from '../dry-fit/index.ts';
import { formatOf, type JobDocument } from '../job/index.ts';
import { ADHESIVES, adhesive, FINISHES, finish, SETTING_OUT } from '../materials/index.ts';
import { type LengthFormat, parseLength, printSetting, type Ticks, toMm } from '../measure/index.ts';
import { type Part, type SetOut, shapeOf } from '../setting-out/index.ts';
import type { Solids } from '../solid/index.ts';

/** What the dry fit of a build is run with: the cards, the shop as it really is, and the drawing to compare with. */
export function dryFitInput(
  job: JobDocument,
  drawn: SetOut,
  breakdown: Breakdown,
  build: BuildPlan,
  solids: Solids,
): DryFitInput {
  const { ledger } = drawn;
  const read = asPrinted(formatOf(job.shop));
  const length = (text: string): Ticks => {
    const found = parseLength(text, job.shop.units);
    if (!found.ok) throw new Error(`unchecked length: ${text}`);
    return found.value;
  };
  const saws = job.shop.tools.filter((t) => t.kind === 'circular-saw' || t.kind === 'mitre-saw');
  const kerfs = new Map(saws.map((t) => [t.id, length(t.kerf)]));
  const powerSaws = new Map(saws.map((t) => [t.id, t.kind]));
  const sawStep = saws[0] ? length(saws[0].step) : SETTING_OUT.setStep.value;
  const parts = new Map(drawn.parts.map((p) => [p.id, p]));
  const edged = new Map(
    drawn.joints.filter((j) => j.duty === 'edging').map((j) => [j.part, [parts.get(j.mate)!]]),
  );
  return {
    build,
    read: (t) => read(ledger.ticks(t)),
    // Where no saw is listed the plan reckons with the usual kerf, and the cards are tried with the same.
    kerfOf: (tool) => kerfs.get(tool ?? '') ?? SETTING_OUT.kerf.value,
    sawOf: (tool) => powerSaws.get(tool ?? ''),
    sawStep,
    screws: new Map(
      job.shop.rack.screws.map((s) => [s.id, { length: length(s.length), diameter: length(s.diameter) }]),
    ),
    fixings: new Map(
      (job.shop.rack.fixings ?? [])
        .flatMap((f) => (f.kind === 'washer' || f.kind === 'leveller' ? [] : [f]))
        .map((f) => [
          f.id,
          f.kind === 'biscuit'
            ? { kind: f.kind, wide: length(f.length), across: length(f.width), thick: length(f.thickness) }
            : { kind: f.kind, wide: length(f.diameter), across: length(f.length), thick: length(f.diameter) },
        ]),
    ),
    care: careOf(job, build),
    solids,
    drawn: drawn.parts.map((p) => ({
      mark: p.mark,
      shape: shapeOf(drawn, p),
      // Edging is trimmed level with its board, however long that was cut.
      toFit: Math.max(...[p, ...(edged.get(p.id) ?? [])].map((part) => toFit(drawn, part, sawStep))),
    })),
    promised: new Map(
      breakdown.leftovers.map((l) => [l.name, [ledger.ticks(l.length), ledger.ticks(l.width)] as const]),
    ),
  };
}

/** The name that cards give the finished piece. */
const PIECE = 'case';

/**
 * How long glue and coats need at the least: by the maker's own timings, or the label, or what is usual for their kind;
 * and the coats that the plan promises.
 */
function careOf({ shop }: JobDocument, { finishing }: BuildPlan): Care {
  const { timings = {}, rack } = shop;
  const [glue, coat] = [rack.adhesives[0], rack.finishes[0]];
  const own = (...kinds: readonly string[]) =>
    Math.min(...kinds.map((kind) => timings[kind]?.waiting ?? Number.POSITIVE_INFINITY));
  const usualGlue = (adhesive(glue?.material ?? '') ?? ADHESIVES[0]!).clampMinutes[0];
  const usualCoat = (finish(coat?.material ?? '') ?? FINISHES[0]!).recoatHours[0];
  const onTop = finishing?.classes.some((c) => c.surface === 'top') ? 1 : 0;
  return {
    glueSets: Math.min(own('cure', 'edge', 'glue-up'), glue?.label?.clampMinutes ?? usualGlue),
    coatDries: Math.min(own('prefinish', 'finish'), Math.round((coat?.label?.recoatHours ?? usualCoat) * 60)),
    coats: new Map(
      finishing
        ? [
            [PIECE, finishing.coats + onTop],
            ...finishing.before.map((mark) => [mark, finishing.coats] as const),
          ]
        : [],
    ),
  };
}

/**
 * How far a part's size is from the drawing beyond a step of the saw, mm: because of what it must fit, or because it was
 * made so. Edging is trimmed level with its board and follows it; mitred round a door that was cut to its opening it goes the
 * whole way with that, and a step of its own comes to it.
 */
function toFit({ ledger, joints, parts }: SetOut, part: Part, sawStep: Ticks): number {
  const boards = joints.filter((j) => j.duty === 'edging' && j.part === part.id).map((j) => j.mate);
  const off = [part, ...parts.filter((p) => boards.includes(p.id))].flatMap((p) =>
    (['length', 'width'] as const).map((size) =>
      p.fitted
        ? Math.abs(ledger.ticks(p[size]) - ledger.ticks(p.fitted[size])) - (p === part ? sawStep : 0)
        : Math.abs(ledger.ticks((p.rough ?? p)[size]) - ledger.ticks(p.cut[size])) - sawStep,
    ),
  );
  return toMm(Math.max(0, ...off));
}

/** Reads a length as its card prints it, not as it was reckoned. */
function asPrinted(format: LengthFormat): (t: Ticks) => Ticks {
  const known = new Map<Ticks, Ticks>();
  return (t) => {
    let read = known.get(t);
    if (read === undefined) {
      const printed = printSetting(t, format);
      const again = parseLength(printed, format.unit);
      if (!again.ok) throw new Error(`a card prints what can’t be read: ${printed}`);
      read = again.value;
      known.set(t, read);
    }
    return read;
  };
}
