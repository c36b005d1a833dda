import type { Operation } from '../build/index.ts';
import type { Bit, ToolKind } from '../job/index.ts';
import { POCKET_HOLE } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { lengthMm, ShopWords } from './shop-words.ts';

type BitKind = Bit['kind'];

/** A bit that an operation needs. */
interface Need {
  readonly kind: BitKind;
  /** Absent: any size of the kind does. */
  readonly mm?: number;
  /** True when a larger one does as well: a countersink is stopped at the width it is needed to. */
  readonly larger?: boolean;
  /** True when only this very size does: fences are set for it. */
  readonly exact?: boolean;
  readonly operation: string;
  readonly title: string;
}

/** A hole may be this much wider or narrower than reckoned, mm (common practice: drills come in steps of 0.5). */
const NEAR_ENOUGH = 0.3;

const KINDS: Record<BitKind, string> = {
  twist: 'twist drill',
  countersink: 'countersink',
  pocket: 'pocket-hole bit',
  straight: 'straight router bit',
  rabbet: 'rabbet bit',
  'flush-trim': 'flush-trim bit',
  forstner: 'Forstner bit',
  'hole-saw': 'hole saw',
};

/** Whether the shop has a bit for every hole, rabbet and trimmed edge of the plan. One snag for each that it lacks. */
export function bits({ job, setOut, build }: Pick<CheckInput, 'job' | 'setOut' | 'build'>): readonly Snag[] {
  const words = new ShopWords(job);
  const mm = (t: Traced) => toMm(setOut.ledger.ticks(t));
  const owned = job.shop.rack.bits.map((b) => ({ kind: b.kind, mm: lengthMm(job, b.diameter) }));
  const told = new Set<string>();
  const snags: Snag[] = [];
  for (const o of build.operations) {
    const tool = job.shop.tools.find((t) => t.id === o.tool)?.kind;
    for (const need of needsOf(o, tool, mm).map((n) => ({ ...n, operation: o.id, title: o.title }))) {
      const key = `${need.kind} ${need.mm}`;
      if (told.has(key) || owned.some((b) => serves(b, need))) continue;
      told.add(key);
      snags.push(lacking(need, owned, words));
    }
  }
  return snags;
}

/** The bits of an operation. What a saw, a chisel or a drill makes without a router asks for no router bit. */
function needsOf(
  { does, kind }: Operation,
  tool: ToolKind | undefined,
  mm: (t: Traced) => number,
): readonly Omit<Need, 'operation' | 'title'>[] {
  switch (does.act) {
    case 'drill':
      return [
        { kind: does.bit ?? 'twist', mm: mm(does.diameter) },
        ...(does.counterbore ? [{ kind: 'forstner' as const, mm: mm(does.counterbore.diameter) }] : []),
        ...(does.countersink === undefined
          ? []
          : [{ kind: 'countersink' as const, mm: mm(does.countersink), larger: true }]),
      ];
    case 'pin-holes':
      return [{ kind: 'twist', mm: mm(does.diameter) }];
    case 'pocket':
      return [{ kind: 'pocket', mm: toMm(POCKET_HOLE.bore.value) }];
    case 'rabbet':
      return tool === 'router' ? [{ kind: 'straight' }] : [];
    case 'slot':
      return tool === 'router'
        ? [{ kind: 'straight', mm: mm(does.bit), exact: true }]
        : [{ kind: 'twist', mm: mm(does.bit) }];
    case 'groove':
      return tool === 'router' ? [{ kind: 'straight', mm: mm(does.bit), exact: true }] : [];
    case 'spline-groove':
      return 'routed' in does.by ? [{ kind: 'straight', mm: mm(does.by.bit), exact: true }] : [];
    case 'flush':
      return kind === 'flush' && tool === 'router' ? [{ kind: 'flush-trim' }] : [];
    default:
      return [];
  }
}

function serves(
  bit: { readonly kind: BitKind; readonly mm: number },
  need: Omit<Need, 'operation' | 'title'>,
): boolean {
  // A rabbet is cut by a straight bit along the edge guide, or by a rabbet bit.
  const rightKind =
    bit.kind === need.kind || (need.kind === 'straight' && !need.exact && bit.kind === 'rabbet');
  if (!rightKind || need.mm === undefined) return rightKind;
  const away = Math.round((bit.mm - need.mm) * 1000) / 1000;
  return Math.abs(away) <= (need.exact ? 0 : NEAR_ENOUGH) || (need.larger === true && away > 0);
}

function lacking(
  need: Need,
  owned: readonly { readonly kind: BitKind; readonly mm: number }[],
  words: ShopWords,
): Snag {
  const size = need.mm === undefined ? '' : ` of ${words.fine(need.mm)}`;
  const nearest = owned
    .filter((b) => b.kind === need.kind && need.mm !== undefined)
    .sort((a, b) => Math.abs(a.mm - need.mm!) - Math.abs(b.mm - need.mm!) || a.mm - b.mm)[0];
  return {
    code: 'tools.no-bit',
    level: 'stop',
    where: { path: 'shop/rack/bits', operation: need.operation },
    sentence: `“${need.title}” needs a ${KINDS[need.kind]}${size}, which the shop doesn’t have${nearest === undefined ? '' : `; its nearest is ${words.fine(nearest.mm)}`}.`,
    ...(need.mm !== undefined && nearest ? { figures: words.atMost(nearest.mm, need.mm) } : {}),
    rule: practice(`a bit within ${NEAR_ENOUGH} mm of the hole’s size does`),
    cures: [{ says: `Borrow or buy a ${KINDS[need.kind]}${size}, then add it to the list of bits.` }],
  };
}
