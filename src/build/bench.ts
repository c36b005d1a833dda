import type { JobDocument, Tool, ToolKind, ToolOf } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import {
  type Ledger,
  type LengthRow,
  parseLength,
  type Rounding,
  type Ticks,
  type Traced,
} from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import { GaugeSticks } from './gauge-sticks.ts';
import { MINUTES, WAITS } from './minutes.ts';
import type { Setting } from './one-setting.ts';
import type { Act, Operation } from './operation.ts';
import type { OperationKind } from './operation-kind.ts';
import { clampTime, coatTime } from './setting-times.ts';
import type { StageId } from './stages.ts';
import type { StoryStick } from './story-sticks.ts';
import type { Lies } from './turning.ts';
import { waysRound } from './ways-round.ts';

/** What an operation's writer says of it; the bench fills in the rest. */
export interface OperationDraft {
  readonly id: string;
  readonly kind: OperationKind;
  readonly stage: StageId;
  readonly title: string;
  readonly does: Act;
  readonly tool?: ToolKind;
  /** How far apart the jaws of its clamps go; where a shop has clamps of several reaches, the card names such as do. */
  readonly spans?: Traced;
  readonly after?: readonly string[];
  readonly faceUp?: string;
  readonly reference?: string;
  readonly lines: readonly string[];
  readonly lengths?: readonly Traced[];
  /** How many times the kind's own minutes it takes. */
  readonly times?: number;
  readonly cautions?: readonly string[];
  /** Clamps that stay on while it sets. */
  readonly clamps?: number;
  /** What is done without a break bears the same name; only the last of it is left to set. */
  readonly together?: { readonly name: string; readonly last: boolean };
}

/**
 * The bench at which a build is written down: operations so far, the last one that touched each workpiece, and
 * what the shop's tools can set.
 */
export class Bench {
  readonly operations: Operation[] = [];
  readonly snags: Snag[] = [];
  readonly job: JobDocument;
  readonly setOut: SetOut;
  readonly ledger: Ledger;
  readonly gauges: GaugeSticks;
  /** Work on loose parts that is not written down yet. */
  readonly settings: Setting[] = [];
  readonly stories: StoryStick[] = [];
  /** How each case that is being put together lies. */
  readonly lies = new Map<string, Lies>();
  private readonly lastOn = new Map<string, string>();
  private readonly missing = new Set<ToolKind>();

  constructor(job: JobDocument, setOut: SetOut) {
    this.job = job;
    this.setOut = setOut;
    this.ledger = setOut.ledger;
    this.gauges = new GaugeSticks(setOut.ledger);
  }

  tool<K extends ToolKind>(kind: K): ToolOf<K> | undefined {
    return this.job.shop.tools.find((t: Tool): t is ToolOf<K> => t.kind === kind);
  }

  /** The shortest clamps that go so far apart, or the longest that are there. */
  clampFor(spans: Traced): ToolOf<'clamp'> | undefined {
    const reach = (t: ToolOf<'clamp'>) => this.ticksOf(t.reach);
    const clamps = this.job.shop.tools
      .filter((t: Tool): t is ToolOf<'clamp'> => t.kind === 'clamp')
      .sort((a, b) => reach(a) - reach(b));
    return clamps.find((t) => reach(t) >= this.ledger.ticks(spans)) ?? clamps.at(-1);
  }

  /** A length of the document that belongs to a tool. */
  ofTool(tool: Tool, field: 'step' | 'kerf' | 'length' | 'width' | 'height' | 'reach' | 'base'): Traced {
    const text = Reflect.get(tool, field) as string;
    const read = parseLength(text, this.job.shop.units);
    if (!read.ok) throw new Error(`unchecked length: ${text}`);
    return this.ledger.document(`shop/tools/${tool.id}/${field}`, read.value, text);
  }

  /** What a saw takes away; the usual where the shop has none. */
  kerfOf(kind: 'circular-saw' | 'mitre-saw'): Traced {
    const saw = this.tool(kind);
    return saw ? this.ofTool(saw, 'kerf') : this.ledger.row(SETTING_OUT.kerf);
  }

  /** A length of the document, in ticks. */
  ticksOf(text: string): Ticks {
    const read = parseLength(text, this.job.shop.units);
    if (!read.ok) throw new Error(`unchecked length: ${text}`);
    return read.value;
  }

  /** A length on the grid of what a kind of tool can set; what no tool is there for goes to whole millimetres. */
  set(kind: ToolKind, length: Traced, how: Rounding = 'nearest'): Traced {
    return this.ledger.round(`as fine as ${TOOL_WORDS[kind]} is set`, length, this.finest(kind), how);
  }

  /** A rule of the trade that a card prints: in an inch shop to what its rule shows, as it is given in millimetres. */
  rule(row: LengthRow): Traced {
    const length = this.ledger.row(row);
    return this.job.shop.units === 'in' ? this.set('marking', length) : length;
  }

  /** The finest step that a kind of tool can be set to; holes are marked out, so what is missing is set as the rule is read. */
  finest(kind: ToolKind): Traced {
    const tool = this.tool(kind) ?? (STANDS_IN.has(kind) ? this.markedWith() : undefined);
    return tool && 'step' in tool ? this.ofTool(tool, 'step') : this.ledger.row(SETTING_OUT.setStep);
  }

  private markedWith(): Tool | undefined {
    return this.tool('marking') ?? this.tool('drill');
  }

  /** Writes an operation down. It comes after whatever last touched what it works on. */
  do(draft: OperationDraft, works: readonly string[]): void {
    const after = new Set(draft.after ?? []);
    for (const w of works) {
      const last = this.lastOn.get(w);
      if (last !== undefined) after.add(last);
    }
    const tool =
      draft.tool === undefined
        ? undefined
        : draft.tool === 'clamp' && draft.spans !== undefined
          ? this.clampFor(draft.spans)
          : this.tool(draft.tool);
    if (draft.tool !== undefined && !tool) this.lacks(draft.tool, draft);
    // Nothing begins before the stock is there and measured.
    const first = this.operations.find((o) => o.kind === 'gather');
    if (after.size === 0 && first) after.add(first.id);
    const minutes = MINUTES[draft.kind];
    const own = this.job.shop.timings?.[draft.kind];
    const { rack } = this.job.shop;
    const waits = draft.together?.last === false ? undefined : WAITS[draft.kind];
    // What goes on without a break is left alone only when the last of it is done.
    const left = draft.together?.last === false ? undefined : own?.waiting;
    const setting =
      waits === 'glue'
        ? clampTime(rack.adhesives, left)
        : waits === 'coat'
          ? coatTime(rack.finishes, left)
          : undefined;
    this.operations.push({
      id: draft.id,
      kind: draft.kind,
      stage: draft.stage,
      title: draft.title,
      does: draft.does,
      ...(tool ? { tool: tool.id } : {}),
      after: [...after].sort(),
      ...(draft.faceUp === undefined ? {} : { faceUp: draft.faceUp }),
      ...(draft.reference === undefined ? {} : { reference: draft.reference }),
      lines: setting ? [...draft.lines, setting.says] : draft.lines,
      lengths: draft.lengths ?? [],
      minutes: {
        active: Math.round((own?.active ?? minutes.active) * (draft.times ?? 1)),
        waiting: Math.round(setting?.minutes ?? left ?? minutes.waiting),
      },
      ...(draft.clamps === undefined ? {} : { clamps: draft.clamps }),
      ...(draft.together === undefined ? {} : { together: draft.together.name }),
      cautions: draft.cautions ?? [],
    });
    for (const w of works) this.lastOn.set(w, draft.id);
  }

  /** Has a workpiece or an assembly come about yet? */
  isThere(workpiece: string): boolean {
    return this.lastOn.has(workpiece);
  }

  /** Says that a new workpiece comes from an operation. */
  comesFrom(workpiece: string, operation: string): void {
    this.lastOn.set(workpiece, operation);
  }

  private lacks(kind: ToolKind, draft: OperationDraft): void {
    if (this.missing.has(kind)) return;
    this.missing.add(kind);
    this.snags.push({
      code: 'tools.missing',
      level: 'stop',
      where: { operation: draft.id, path: 'shop/tools' },
      sentence: `“${draft.title}” needs ${TOOL_WORDS[kind]}, which the shop doesn’t have.`,
      rule: {
        says: 'each operation is done with a tool of the shop',
        source: 'common practice',
        confirmed: true,
      },
      cures: waysRound(this.job, kind),
    });
  }
}

/** What is worked to marks: without the tool, the rule says how fine. */
const STANDS_IN: ReadonlySet<ToolKind> = new Set(['drill', 'marking']);

const TOOL_WORDS: Record<ToolKind, string> = {
  'circular-saw': 'the circular saw',
  'guide-rail': 'the guide rail',
  'mitre-saw': 'the mitre saw',
  drill: 'the drill',
  'pocket-jig': 'the pocket-hole jig',
  'dowel-jig': 'a dowelling jig',
  'biscuit-joiner': 'a biscuit joiner',
  router: 'the router',
  sander: 'the sander',
  clamp: 'clamps',
  marking: 'rule and square',
};
