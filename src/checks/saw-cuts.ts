import { cutsOfAct, type Operation } from '../build/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { CheckInput } from './check-input.ts';

/** A workpiece as it lies there, mm. */
interface Lying {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** What a cut asks of its tools. */
export interface SawCut {
  readonly operation: Operation;
  /** Length of the cut, and whether it runs along a rail: of a sheet or a glued-up panel, not of a strip. */
  readonly run: number;
  readonly onSheet: boolean;
  readonly thickness: number;
  readonly width: number;
  readonly angle: number;
}

/** Follows every workpiece through the cuts, from the stock on; a kerf too much does no harm here. */
export function sawCuts({ setOut, build }: Pick<CheckInput, 'setOut' | 'build'>): readonly SawCut[] {
  const l = setOut.ledger;
  const mm = (t: Traced) => toMm(l.ticks(t));
  const lying = new Map<string, Lying>(
    build.stock.map((w) => [
      w.name,
      { length: mm(w.length), width: mm(w.width), thickness: mm(w.thickness) },
    ]),
  );
  const cuts: SawCut[] = [];
  for (const operation of build.operations) {
    const { does } = operation;
    if (does.act === 'plane')
      for (const name of does.workpieces) {
        const w = lying.get(name);
        if (w) lying.set(name, { ...w, [does.across]: mm(does.to) });
      }
    else if (does.act === 'glue-up') {
      const boards = does.boards.flatMap((name) => lying.get(name) ?? []);
      if (boards.length > 0) lying.set(does.as, sideBySide(boards));
    } else if (does.act === 'name') {
      const w = lying.get(does.workpiece);
      if (w) lying.set(does.as.name, turned(w, does.as.turned));
    } else if (does.act === 'saw' || does.act === 'saw-alike') {
      for (const cut of cutsOfAct(does)) {
        const w = lying.get(cut.workpiece);
        if (!w) continue;
        const lengthwise = cut.across === 'length';
        if (!cut.knife)
          cuts.push({
            operation,
            run: lengthwise ? w.width : w.length,
            onSheet: operation.stage === 'sheets' || operation.stage === 'panels',
            thickness: w.thickness,
            width: w.width,
            angle: 0,
          });
        const size = lengthwise ? w.length : w.width;
        const both = [mm(cut.at), Math.max(0, size - mm(cut.at))];
        cut.yields.forEach((y, i) => {
          if (y)
            lying.set(
              y.name,
              turned(lengthwise ? { ...w, length: both[i]! } : { ...w, width: both[i]! }, y.turned),
            );
        });
      }
    } else if (does.act === 'part') {
      const w = lying.get(does.workpiece);
      if (!w) continue;
      const { length, thickness, width } = w;
      cuts.push({ operation, run: length, onSheet: true, thickness, width, angle: does.angle });
      const [first, second] = does.yields;
      const under = thickness * Math.tan((does.angle * Math.PI) / 180);
      if (first !== undefined) lying.set(first, { ...w, width: Math.min(width, mm(does.at)) });
      if (second !== undefined)
        lying.set(second, { ...w, width: Math.min(width, width - mm(does.at) + under) });
    } else if (does.act === 'rip-apart') {
      const w = lying.get(does.workpiece);
      if (!w) continue;
      const { length, thickness, width } = w;
      cuts.push({ operation, run: length, onSheet: true, thickness, width, angle: 0 });
      does.yields.forEach((name, i) => {
        lying.set(name, { ...w, width: mm(does.widths[i]!) });
      });
    } else if (does.act === 'bevel')
      for (const name of does.workpieces) {
        const part = setOut.parts.find((p) => p.mark === name);
        const w = lying.get(name);
        if (part && w)
          cuts.push({
            operation,
            run: w.width,
            onSheet: false,
            thickness: w.thickness,
            width: w.width,
            angle: does.angle,
          });
      }
    else if (does.act === 'spline-groove' && 'sawn' in does.by)
      for (const name of does.workpieces) {
        const w = lying.get(name);
        if (!w) continue;
        // The blade reaches so far along itself, and less far down.
        const deep = Math.max(...does.by.sawn.map((p) => mm(p.blade))) * Math.SQRT1_2;
        cuts.push({
          operation,
          run: w.width,
          onSheet: false,
          thickness: deep,
          width: w.width,
          angle: 45,
        });
      }
  }
  return cuts;
}

/** Boards glued edge to edge: as wide as all of them, as long and as thick as the least. */
function sideBySide(boards: readonly Lying[]): Lying {
  return {
    length: Math.min(...boards.map((b) => b.length)),
    width: boards.reduce((sum, b) => sum + b.width, 0),
    thickness: Math.min(...boards.map((b) => b.thickness)),
  };
}

function turned(w: Lying, isTurned: boolean): Lying {
  return isTurned ? { ...w, length: w.width, width: w.length } : w;
}
