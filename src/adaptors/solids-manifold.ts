import openManifold, { type Manifold, type ManifoldToplevel, type Mat4, type Vec3 } from 'manifold-3d';
import { TICKS_PER_MM } from '../measure/index.ts';
import type { Body, Frame, Mesh, Point, Shape, Solids } from '../solid/index.ts';

/** How to open the modeller. */
export interface OpenSolids {
  /**
   * Where `manifold.wasm` lies. Node finds it inside the package; a bundled page or worker gives the address its
   * bundler made (`import wasmUrl from 'manifold-3d/manifold.wasm?url'`).
   */
  readonly wasmUrl?: string;
}

/** Less than this many cubic millimetres is nothing. */
const NOTHING = 1e-3;

/*
 * Inside the kernel a length is counted in ticks. Corners that lie on whole ticks are then whole numbers there, and
 * stay so when a part is turned and set in its place: faces that should touch do touch, to the last bit. (In
 * millimetres 17.6 + 582.4 may miss 600 by a hair, and what hangs together would fall apart.)
 */
const CUBIC_TICKS_PER_CUBIC_MM = TICKS_PER_MM ** 3;
const FINE = 2 ** 20;

/** A point in the kernel's units, taken to a millionth of a tick so that a whole tick comes out as a whole number. */
function toKernel(p: Point): Vec3 {
  if (!p.every(Number.isFinite)) throw new RangeError(`not a point: ${p}`);
  return p.map((mm) => Math.round(mm * TICKS_PER_MM * FINE) / FINE) as Vec3;
}

function fromKernel(v: readonly number[]): Point {
  return [v[0]! / TICKS_PER_MM, v[1]! / TICKS_PER_MM, v[2]! / TICKS_PER_MM];
}

/** Opens the solid modeller (Manifold). Each call opens one of its own, with its own memory. */
export async function openSolids(options: OpenSolids = {}): Promise<Solids> {
  const { wasmUrl } = options;
  const kernel = await (wasmUrl === undefined ? openManifold() : openManifold({ locateFile: () => wasmUrl }));
  kernel.setup();
  return new ManifoldSolids(kernel);
}

class ManifoldSolids implements Solids {
  private readonly kernel: ManifoldToplevel;
  /** What the calls of `within` now running have to free, innermost last. */
  private readonly scopes: Set<ManifoldBody>[] = [];

  constructor(kernel: ManifoldToplevel) {
    this.kernel = kernel;
  }

  make(shape: Shape): Body {
    return this.own(makeManifold(this.kernel.Manifold, shape));
  }

  within<T>(work: () => T): T {
    const scope = new Set<ManifoldBody>();
    this.scopes.push(scope);
    try {
      return work();
    } finally {
      this.scopes.pop();
      for (const body of scope) body.free();
    }
  }

  /** An empty body. */
  nothing(): ManifoldBody {
    return this.own(this.kernel.Manifold.union([]));
  }

  /** Wraps a kernel object as a body of the innermost scope. */
  own(manifold: Manifold): ManifoldBody {
    const status = manifold.status();
    if (status !== 'NoError') {
      manifold.delete();
      throw new Error(`the solid modeller refused a shape: ${status}`);
    }
    const scope = this.scopes.at(-1);
    const body = new ManifoldBody(this, manifold, scope);
    scope?.add(body);
    return body;
  }
}

class ManifoldBody implements Body {
  private readonly solids: ManifoldSolids;
  private readonly scope: Set<ManifoldBody> | undefined;
  private held: Manifold | undefined;

  constructor(solids: ManifoldSolids, manifold: Manifold, scope: Set<ManifoldBody> | undefined) {
    this.solids = solids;
    this.held = manifold;
    this.scope = scope;
  }

  private get manifold(): Manifold {
    if (this.held === undefined) throw new Error('this body has been freed');
    return this.held;
  }

  volume(): number {
    return this.manifold.volume() / CUBIC_TICKS_PER_CUBIC_MM;
  }

  centre(): Point {
    if (this.manifold.isEmpty()) return [0, 0, 0];
    const { min, max } = this.manifold.boundingBox();
    const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
    // The skin comes out in single precision, so it is read near the origin, where that loses least.
    const near = this.manifold.translate([-middle[0], -middle[1], -middle[2]]);
    try {
      const c = centreOfSkin(near.getMesh());
      return fromKernel(middle.map((m, axis) => m + c[axis]!));
    } finally {
      near.delete();
    }
  }

  bounds(): { readonly min: Point; readonly max: Point } | undefined {
    if (this.manifold.isEmpty()) return undefined;
    const { min, max } = this.manifold.boundingBox();
    return { min: fromKernel(min), max: fromKernel(max) };
  }

  isEmpty(): boolean {
    return this.manifold.isEmpty() || this.volume() < NOTHING;
  }

  without(other: Body): Body {
    const tool = manifoldOf(other);
    if (liesBeside(this.manifold, tool)) return this.solids.own(this.manifold.translate([0, 0, 0]));
    return this.solids.own(this.manifold.subtract(tool));
  }

  common(other: Body): Body {
    const there = manifoldOf(other);
    if (liesBeside(this.manifold, there)) return this.solids.nothing();
    return this.solids.own(this.manifold.intersect(there));
  }

  union(other: Body): Body {
    return this.solids.own(this.manifold.add(manifoldOf(other)));
  }

  moved(frame: Frame): Body {
    return this.solids.own(this.manifold.transform(matrixOf(frame)));
  }

  pieces(): readonly Body[] {
    const found = this.manifold.decompose().map((m) => this.solids.own(m));
    const kept = found.filter((body) => !body.isEmpty());
    for (const body of found) if (!kept.includes(body)) body.free();
    // Equal volumes are told apart by where they lie, so that the order is always the same.
    const keyed = kept.map((body) => ({
      body,
      key: [-body.volume(), ...body.bounds()!.min].map((n) => Math.round(n * 1e3)),
    }));
    keyed.sort((a, b) => compareLists(a.key, b.key));
    return keyed.map((k) => k.body);
  }

  mesh(): Mesh {
    const { numProp, vertProperties, triVerts } = this.manifold.getMesh();
    if (numProp !== 3) throw new Error(`a skin with ${numProp} numbers a corner`);
    return { positions: vertProperties.map((v) => v / TICKS_PER_MM), triangles: triVerts };
  }

  free(): void {
    this.held?.delete();
    this.held = undefined;
    this.scope?.delete(this);
  }

  /** The kernel object behind a body that this adaptor made. */
  static manifoldOf(body: Body): Manifold {
    if (!(body instanceof ManifoldBody)) throw new TypeError('a body of another modeller');
    return body.manifold;
  }
}

const manifoldOf = ManifoldBody.manifoldOf;

/**
 * Whether the bounding boxes share no room: then the bodies at most touch. Most parts of a piece do, and faces that
 * coincide are the slowest case for the kernel.
 */
function liesBeside(a: Manifold, b: Manifold): boolean {
  const [p, q] = [a.boundingBox(), b.boundingBox()];
  // Of an empty body the box is turned inside out, which counts as beside.
  return [0, 1, 2].some((i) => !(Math.min(p.max[i]!, q.max[i]!) > Math.max(p.min[i]!, q.min[i]!)));
}

type Kernel = ManifoldToplevel['Manifold'];
type KernelMesh = Pick<ReturnType<Manifold['getMesh']>, 'vertProperties' | 'triVerts'>;

/** The kernel object for a shape; the caller deletes it. What was made on the way is deleted here. */
function makeManifold(kernel: Kernel, shape: Shape): Manifold {
  switch (shape.kind) {
    case 'box':
      return makeBox(kernel, shape.min, shape.max);
    case 'cylinder':
      return makeCylinder(kernel, shape.from, shape.to, shape.radius, shape.toRadius ?? shape.radius);
    case 'hull':
      return kernel.hull(shape.points.map(toKernel));
    case 'union':
      return joined(kernel, shape.of, (made) => kernel.union(made));
    case 'without':
      return joined(kernel, [shape.body, ...shape.cuts], (made) => kernel.difference(made));
    case 'common':
      if (shape.of.length === 0) throw new RangeError('nothing has no common part');
      return joined(kernel, shape.of, (made) => kernel.intersection(made));
    case 'moved': {
      const matrix = matrixOf(shape.frame);
      return joined(kernel, [shape.body], ([made]) => made!.transform(matrix));
    }
  }
}

function joined(kernel: Kernel, of: readonly Shape[], join: (made: Manifold[]) => Manifold): Manifold {
  const made: Manifold[] = [];
  try {
    for (const shape of of) made.push(makeManifold(kernel, shape));
    return join(made);
  } finally {
    for (const m of made) m.delete();
  }
}

function makeBox(kernel: Kernel, min: Point, max: Point): Manifold {
  const from = toKernel(min);
  const size = toKernel(max).map((m, axis) => m - from[axis]!) as Vec3;
  if (size.some((s) => s < 0)) throw new RangeError(`a box turned inside out: ${min} to ${max}`);
  if (size.some((s) => s === 0)) return kernel.union([]);
  const atOrigin = kernel.cube(size);
  try {
    return atOrigin.translate(from);
  } finally {
    atOrigin.delete();
  }
}

/** How far a round skin may lie from the true circle, in mm, up to the radius at which `MOST_SIDES` is reached. */
const SKIN_ERROR = 0.02;
const FEWEST_SIDES = 24;
const MOST_SIDES = 160;

/**
 * Sides of the polygon that stands for a circle: enough that the flats lie within 0.02 mm of it up to a radius of
 * about 100 mm. A multiple of eight, so that a quarter turn and a mirror image lay it onto itself.
 */
function sidesOf(radius: number): number {
  const wanted = Math.PI * Math.sqrt(radius / (2 * SKIN_ERROR));
  return 8 * Math.ceil(Math.min(MOST_SIDES, Math.max(FEWEST_SIDES, wanted)) / 8);
}

/**
 * A round bar or taper as a prism of the same volume: the polygon has the circle's area (its corners stand a little
 * outside, its flats a little inside), so volumes and masses have no error from the number of sides.
 */
function makeCylinder(kernel: Kernel, from: Point, to: Point, radius: number, toRadius: number): Manifold {
  if (!(radius >= 0 && toRadius >= 0)) throw new RangeError(`a negative radius: ${radius}, ${toRadius}`);
  const ends = [toKernel(from), toKernel(to)] as const;
  const axis = ends[1].map((t, i) => t - ends[0][i]!);
  const length = Math.hypot(...axis);
  if (length === 0 || (radius === 0 && toRadius === 0)) return kernel.union([]);

  // One of the two ways round is the standard one, so that a bar and its hole mesh alike whichever end came first.
  // Only a bar that comes to a point starts at its wide end always: the kernel can't make it the other way.
  const lead = axis.find((a) => Math.abs(a) > 1e-9 * length)!;
  const swap = radius === 0 || (toRadius !== 0 && lead < 0);
  const [start, end] = swap ? [ends[1], ends[0]] : ends;
  const [startRadius, endRadius] = swap ? [toRadius, radius] : [radius, toRadius];

  const n = sidesOf(Math.max(radius, toRadius));
  const sameArea = Math.sqrt((2 * Math.PI) / (n * Math.sin((2 * Math.PI) / n)));
  const grow = (TICKS_PER_MM * Math.round(sameArea * 1e12)) / 1e12;
  const bar = kernel.cylinder(length, startRadius * grow, endRadius * grow, n);
  try {
    return bar.transform(kernelMatrix(frameAlong(start, end)));
  } finally {
    bar.delete();
  }
}

/** A frame whose z runs from `start` to `end`; x is the piece axis most across it, laid square. */
function frameAlong(start: Point, end: Point): Frame {
  const z = unit([end[0] - start[0], end[1] - start[1], end[2] - start[2]]);
  const across = [0, 1, 2].reduce((best, i) => (Math.abs(z[i]!) < Math.abs(z[best]!) - 1e-9 ? i : best), 0);
  const away = [0, 0, 0].map((_, i) => (i === across ? 1 : 0)) as unknown as Point;
  const y = unit(cross(z, away));
  return { origin: start, x: cross(y, z), y, z };
}

/** The kernel's matrix (columns first) of a frame. Throws unless the frame is square, of unit length, right-handed. */
function matrixOf(frame: Frame): Mat4 {
  const { x, y, z } = frame;
  const turn = cross(x, y);
  const off = Math.max(
    Math.abs(dot(x, x) - 1),
    Math.abs(dot(y, y) - 1),
    Math.abs(dot(x, y)),
    ...turn.map((t, i) => Math.abs(t - z[i]!)),
  );
  if (!(off < 1e-6)) throw new RangeError(`not a right-handed frame of unit vectors: ${x}; ${y}; ${z}`);
  return kernelMatrix({ ...frame, origin: toKernel(frame.origin) });
}

function kernelMatrix({ origin, x, y, z }: Frame): Mat4 {
  return [...x, 0, ...y, 0, ...z, 0, ...origin, 1];
}

/** Centre of volume: tetrahedra from the origin to every triangle, each weighed by its signed volume. */
function centreOfSkin({ vertProperties, triVerts }: KernelMesh): Point {
  const corner = (i: number): Point => {
    const at = 3 * triVerts[i]!;
    return [vertProperties[at]!, vertProperties[at + 1]!, vertProperties[at + 2]!];
  };
  let volume = 0;
  const sum = [0, 0, 0];
  for (let t = 0; t < triVerts.length; t += 3) {
    const [a, b, c] = [corner(t), corner(t + 1), corner(t + 2)];
    const v = dot(a, cross(b, c));
    volume += v;
    for (let i = 0; i < 3; i++) sum[i]! += (v * (a[i]! + b[i]! + c[i]!)) / 4;
  }
  return volume === 0 ? [0, 0, 0] : [sum[0]! / volume, sum[1]! / volume, sum[2]! / volume];
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Point): Point {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
}
