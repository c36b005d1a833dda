import { fromMm, type LengthRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string, source = PRACTICE): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

/** What boards lose on their way to a panel that is glued up edge to edge. */
export const GLUED_PANELS = {
  jointing: length(
    'glued-panel.jointing',
    1.5,
    'a board loses about this much at each edge until it is straight and square',
  ),
  overEnds: length(
    'glued-panel.ends',
    20,
    'boards of a panel are left this much longer at each end, and cut off together once it is glued up',
  ),
  overEdges: length(
    'glued-panel.edges',
    5,
    'so much at least is ripped off either long edge of a glued panel, where clamps have dented it',
  ),
  flattening: length(
    'glued-panel.flattening',
    1,
    'a panel of planed boards loses about this much of its thickness until both faces are flat',
    'common practice; figure from memory',
  ),
  leastBoard: length(
    'glued-panel.least-board',
    20,
    'boards narrower than this are not worth gluing to a panel',
  ),
} as const;
