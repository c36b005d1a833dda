import type { RecordOf } from '../../job/index.ts';
import { HOLES, plug } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { holeWidth } from '../joints/hole-bit.ts';
import { holeThrough, isClear, middleOn, panelsOf, regionOf, roundHole } from './panel-holes.ts';

/** Bores the holes for cables through panels. Screws and hinges come later and keep clear of them. */
export function cableHoles(draft: Draft, bores: Bores): void {
  for (const record of draft.tree.all('cable')) {
    const diameter = holeWidth(draft, widthNeeded(draft, record));
    for (const part of panelsOf(draft, record)) {
      const region = regionOf(draft, record, part);
      if (!region) continue;
      const at = middleOn(draft, record, part, region);
      const hole = roundHole(draft, part, at, diameter);
      if (!isClear(draft, bores, record, part, hole)) continue;
      const id = `${part.id}#${record.id}`;
      const purpose = `for a cable: ${plugWords(record)}`;
      part.features.push(holeThrough(draft, part, at, diameter, { id, purpose, use: 'cable' }));
      for (const bore of hole.bores) bores.add(bore);
    }
  }
}

function plugWords(record: RecordOf<'cable'>): string {
  const known = plug(record.plug);
  return known ? known.name : `a plug ${record.plug} across`;
}

/** A hole for the plug, not for the cable. */
function widthNeeded(draft: Draft, record: RecordOf<'cable'>): Traced {
  const l = draft.ledger;
  const known = plug(record.plug);
  const across = known ? l.row(known.across) : draft.typed(`design/records/${record.id}/plug`, record.plug);
  return l.sum('hole that the plug goes through', across, l.row(HOLES.plugClear));
}
