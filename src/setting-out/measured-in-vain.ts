import { nearestNames } from '../snag/index.ts';
import type { Draft } from './draft.ts';

/** Measured values that change nothing: of dimensions that aren't there, or that rest on another to be measured. */
export function measuredInVain(draft: Draft): void {
  for (const [name, typed] of Object.entries(draft.job.work.measured ?? {})) {
    if (draft.measuredUsed.has(name)) continue;
    // What can't be set out has no dimensions to be known by.
    if (draft.parts.length === 0) continue;
    const path = `work/measured/${name}`;
    if (draft.dimensions.has(name))
      draft.snags.push({
        code: 'measured.not-used',
        level: 'stop',
        where: { path },
        sentence: `“${name}” was measured at ${typed}, but nothing is set out by that.`,
        rule: {
          says: 'clear sizes of openings along their split, and of the whole inside, lengths and widths of parts, and thicknesses of lots are taken as measured',
          source: 'how setting out works',
          confirmed: true,
        },
        cures: [{ says: insteadOf(draft, name) }],
      });
    else
      draft.snags.push({
        code: 'measured.no-such-dimension',
        level: 'stop',
        where: { path },
        sentence: `“${name}” was measured, but nothing here is called that.`,
        cures: [
          {
            says: `Nearest: ${nearestNames(name, draft.dimensions.keys())
              .map((n) => `“${n}”`)
              .join(', ')}.`,
          },
        ],
      });
  }
}

function insteadOf(draft: Draft, name: string): string {
  const at = name.lastIndexOf('.');
  const [of, size] = [name.slice(0, at), name.slice(at + 1)];
  const part = draft.parts.find((p) => [p.name, p.mark, p.id, draft.shortNames.get(p.id)].includes(of));
  if (part && size === 'thickness')
    return `Measure “${part.lot}.thickness”: all that is made of the lot follows.`;
  const asPlanned = /^(?:cut|fitted|rough) (length|width)$/.exec(size);
  if (part && asPlanned) return `Measure “${of}.${asPlanned[1]}”, once it is made.`;
  if (/gap( as printed)?$/.test(size))
    return 'Measure the parts and the opening on either side of it: a gap is what they leave.';
  let opening = draft.tree.get(of);
  const along = () => (opening?.kind === 'opening' ? draft.tree.get(opening.parent) : undefined);
  for (let parent = along(); parent?.kind === 'opening'; parent = along()) {
    if (parent.split === (size === 'width' ? 'across' : size === 'height' ? 'down' : 'back')) break;
    opening = parent;
  }
  return size !== 'depth' && opening && opening.id !== of
    ? `Measure “${opening.id}.${size}”, which it is the same as.`
    : 'Change the size in the design.';
}
