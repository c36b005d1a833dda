import type { HingeOf, RecordOf } from '../../job/index.ts';
import { GRAVITY, reckonedDensity, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Top } from '../case/top.ts';
import { evenHinges } from '../doors/even-hinges.ts';
import { buttFigures, ofHinge } from '../doors/hinge-choice.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { gapUnderLid } from './fixed-front.ts';
import { hundredths, staysFor } from './stays.ts';

/** Hangs a hinged top on the back: chooses hinges and their places, and the stays that hold it open. */
export function hangLid(
  draft: Draft,
  frame: CaseFrame,
  top: Top | undefined,
  back: DraftPart | undefined,
): void {
  const record = frame.top;
  if (!record?.hinged || !top || !back) return;
  const l = draft.ledger;
  if (draft.isSome(frame.backSetIn)) {
    backSetIn(draft, frame, record, back);
    return;
  }
  const hinge = hingeFor(draft, record, top, back);
  if (!hinge) return;
  const { kg, momentNm } = weightOf(draft, top);
  const stays = staysFor(draft, { record, what: 'lid', needs: momentNm });
  if (stays === 'weak') return;
  const front = draft.tree.childOf(frame.box.id, 'front');
  draft.lids.push({
    part: top.board.id,
    back: back.id,
    record: record.id,
    ...buttFigures(draft, hinge),
    hinges: evenHinges(draft, l.less('width of the back', back.box.max[0], back.box.min[0]), kg),
    gap: front ? gapUnderLid(draft, front) : frame.insideHeight,
    kg,
    momentNm,
    ...(stays ? { stays } : {}),
  });
}

/** A lid turns about its back edge: what of it stood out behind the hinges would come down on the sides, or on the wall. */
function backSetIn(draft: Draft, frame: CaseFrame, record: RecordOf<'top'>, back: DraftPart): void {
  const held = frame.back;
  const cleat = draft.tree.childOf(frame.box.id, 'hanging')?.by === 'cleat';
  draft.stop(
    'lids.back-set-in',
    record,
    'hinged',
    `The ${back.name} does not stand level with the back edge of the lid, which would come down on what is behind its hinges as it opens.`,
    cleat || !held
      ? { says: 'Hang the case by rails in place of the cleat, or take “hinged” out.' }
      : {
          says: 'Let the back into rabbets, level with the sides.',
          edits: [
            { record: held.id, field: 'fitting', value: 'rabbet' },
            ...(held.setIn === undefined ? [] : [{ record: held.id, field: 'setIn' }]),
          ],
        },
  );
}

/** A butt hinge, as named or the first of the rack: no wider than the back's edge, with screws that stay in the lid. */
function hingeFor(
  draft: Draft,
  record: RecordOf<'top'>,
  top: Top,
  back: DraftPart,
): HingeOf<'butt'> | undefined {
  const l = draft.ledger;
  const butts = (draft.job.shop.rack.hinges ?? []).filter((h): h is HingeOf<'butt'> => h.kind === 'butt');
  const hinge = record.hinge === undefined ? butts[0] : butts.find((h) => h.id === record.hinge);
  const stop = (code: string, sentence: string, cure: string) => {
    draft.stop(code, record, 'hinged', sentence, { says: cure });
    return undefined;
  };
  if (!hinge)
    return stop(
      'hinges.none-suits',
      'The rack has no hinge for the lid, which needs a butt hinge.',
      'Put such a hinge, with its measures, on the rack.',
    );
  if (l.ticks(ofHinge(draft, hinge, 'width')) > l.ticks(back.thickness))
    return stop(
      'lids.hinge-wide',
      `The leaves of hinge “${hinge.id}” are wider than the upper edge of the ${back.name}.`,
      'Use narrower hinges, or a back of a thicker board.',
    );
  const screw = draft.job.shop.rack.screws.find((s) => s.id === hinge.screw)!;
  const length = draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length);
  if (l.ticks(top.board.thickness) - l.ticks(length) < l.ticks(l.row(SETTING_OUT.farFace)))
    return stop(
      'hinges.screw-too-long',
      `The screws of hinge “${hinge.id}” come too near the upper face of the lid.`,
      'Fix it with shorter screws, or make the lid of a thicker board.',
    );
  return hinge;
}

/** What a lid weighs, and its moment about its hinges when it lies level: its mass at the distance of its middle. Statics. */
function weightOf(draft: Draft, top: Top): { readonly kg: number; readonly momentNm: number } {
  const mm = (t: Traced) => toMm(draft.ledger.ticks(t));
  const line = mm(top.board.box.max[1]);
  let kg = 0;
  let momentNm = 0;
  for (const part of [top.board, ...top.strips.values()]) {
    const kgM3 = reckonedDensity(draft.lot(part.lot).material);
    const mass = (mm(part.length) * mm(part.width) * mm(part.thickness) * kgM3) / 1e9;
    kg += mass;
    const middle = (mm(part.box.min[1]) + mm(part.box.max[1])) / 2;
    momentNm += (mass * GRAVITY * (line - middle)) / 1000;
  }
  return { kg: hundredths(kg), momentNm: hundredths(momentNm) };
}
