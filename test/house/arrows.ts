/** One import, as a check sees it: paths from the checkout's root, or the name of a package. */
export interface Arrow {
  readonly from: string;
  readonly to: string;
  /** Only types cross; nothing is left of it when the program runs. */
  readonly typeOnly: boolean;
}

/** The way through the house: a room imports only rooms drawn above it and the ground floor. */
export const WAY = ['job', 'setting-out', 'breakdown', 'build', 'dry-fit', 'checks', 'plan', 'book'] as const;
export const GROUND_FLOOR = ['measure', 'materials', 'snag', 'solid'] as const;
/** What may know the outside world. */
export const FACES = ['adaptors', 'cli', 'app'] as const;

/** Packages that the core may use: they know no more of the outside world than it does. */
const CORE_PACKAGES = ['valibot', '@valibot/to-json-schema', 'jsep', 'mutative'];

/** Rooms that a room may import, where this is less than all above it. */
const FEWER: Readonly<Record<string, readonly string[]>> = {
  // It works from the step cards alone; with the drawing at hand it would compare the drawing with itself.
  'dry-fit': ['build', ...GROUND_FLOOR],
  measure: [],
  snag: ['measure'],
  materials: ['measure'],
  solid: ['measure'],
};

/** Why an import may not be, in a few words; undefined when it may. Tests import what they like. */
export function objection({ from, to, typeOnly }: Arrow): string | undefined {
  if (!from.startsWith('src/') || /\.test\.tsx?$/.test(from)) return undefined;
  const here = roomOf(from);
  const isFace = (FACES as readonly string[]).includes(here);
  if (!to.startsWith('src/')) {
    if (isFace) return here === 'app' && isNode(to) ? 'the app runs in a browser, without Node' : undefined;
    if (isNode(to)) return 'the core knows nothing of Node';
    if (to.startsWith('test/') || to.startsWith('scripts/')) return 'the product does not import its tests';
    if (to.endsWith('.json') && !to.includes('node_modules/')) return undefined;
    const name = packageOf(to);
    return CORE_PACKAGES.includes(name) ? undefined : `the core may not use the package ${name}`;
  }

  const there = roomOf(to);
  if (here === there) {
    if (here === 'breakdown' && isJudge(from) && !isJudge(to) && !typeOnly)
      return 'the judge shares no code with the planner it judges';
    return undefined;
  }
  if (!mayEnter(here, there)) return `${here} may not import ${there}`;
  if (there !== 'adaptors' && to !== `src/${there}/index.ts`)
    return `${there} is entered through its index.ts`;
  return undefined;
}

/** The rooms that `room` may import. */
function mayEnter(room: string, other: string): boolean {
  if (room === 'adaptors') return isRoom(other);
  if (room === 'cli' || room === 'app') return isRoom(other) || other === 'adaptors';
  const fewer = FEWER[room];
  if (fewer !== undefined) return fewer.includes(other);
  const at = (WAY as readonly string[]).indexOf(room);
  if (at < 0) return false;
  return (WAY.slice(0, at) as readonly string[]).includes(other) || isGround(other);
}

/** One round of imports, if there is one, as a list of files that starts and ends with the same. */
export function findCycle(arrows: readonly Arrow[]): readonly string[] | undefined {
  const next = new Map<string, string[]>();
  for (const { from, to } of arrows) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const way: string[] = [];
  const visit = (file: string): readonly string[] | undefined => {
    const at = way.indexOf(file);
    if (at >= 0) return [...way.slice(at), file];
    if (done.has(file)) return undefined;
    done.add(file);
    way.push(file);
    for (const to of next.get(file) ?? []) {
      const found = visit(to);
      if (found) return found;
    }
    way.pop();
    return undefined;
  };
  for (const file of [...next.keys()].sort()) {
    const found = visit(file);
    if (found) return found;
  }
  return undefined;
}

/** The folder under src that a file lies in. */
export function roomOf(file: string): string {
  return file.split('/')[1] ?? '';
}

export function isRoom(name: string): boolean {
  return (WAY as readonly string[]).includes(name) || isGround(name);
}

function isGround(name: string): boolean {
  return (GROUND_FLOOR as readonly string[]).includes(name);
}

function isJudge(file: string): boolean {
  return file.startsWith('src/breakdown/judge/');
}

function isNode(to: string): boolean {
  return to.startsWith('node:');
}

/** The package of a path below node_modules, or of an import as it is written. */
function packageOf(to: string): string {
  const parts = to
    .slice(to.lastIndexOf('node_modules/') + 1)
    .replace(/^ode_modules\//, '')
    .split('/');
  return parts[0]!.startsWith('@') ? `${parts[0]}/${parts[1]}` : parts[0]!;
}
