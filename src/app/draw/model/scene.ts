import {
  AmbientLight,
  Box3,
  type BufferGeometry,
  Color,
  DirectionalLight,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { edgesOf } from './part-geometry.ts';

/** One part to be shown. */
export interface ShownPart {
  readonly id: string;
  readonly wood: 'sheet' | 'strip';
  readonly geometry: BufferGeometry;
}

const WOOD = { sheet: new Color('#f0e2c6'), strip: new Color('#d9b98a') };
const CHOSEN = new Color('#8fb4d1');
const INK = new Color('#1e2329');
/** A pointer that moves less than this between down and up has clicked (pixels). */
const STILL = 5;

/** Where one looks from, as a direction from the piece to the eye. */
export const STANDS = {
  corner: new Vector3(0.44, -1, 0.42),
  front: new Vector3(0, -1, 0.0001),
  side: new Vector3(1, 0, 0.0001),
  above: new Vector3(0, -0.0001, 1),
  behind: new Vector3(-0.44, 1, 0.42),
} as const;

/** The piece in three dimensions on a canvas. Draws when something has changed, and not otherwise. */
export class ModelScene {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera(-1, 1, 1, -1, -20_000, 20_000);
  private readonly controls: OrbitControls;
  private readonly pieces = new Map<string, Group>();
  private readonly bounds = new Box3();
  private readonly picked: (part: string | undefined) => void;
  private stand: Vector3 = STANDS.corner;
  private apart = 0;
  private through = false;
  private chosen: string | undefined;
  private asked = 0;

  constructor(canvas: HTMLCanvasElement, picked: (part: string | undefined) => void) {
    this.picked = picked;
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    this.camera.up.set(0, 0, 1);
    this.scene.add(new AmbientLight('#ffffff', 2.05));
    const lamp = new DirectionalLight('#fff6e6', 1.25);
    lamp.position.set(-0.35, -0.8, 1.25);
    this.scene.add(lamp);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.enableDamping = false;
    this.controls.addEventListener('change', () => this.draw());
    this.listen(canvas);
  }

  /** Shows other parts. The eye stays where it is unless the piece's size has changed. */
  show(parts: readonly ShownPart[]): void {
    for (const group of this.pieces.values()) discard(group);
    this.pieces.clear();
    const before = this.bounds.clone();
    this.bounds.makeEmpty();
    for (const part of parts) {
      const group = new Group();
      group.name = part.id;
      const skin = new MeshLambertMaterial({
        color: WOOD[part.wood],
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
      });
      group.add(new Mesh(part.geometry, skin));
      group.add(new LineSegments(edgesOf(part.geometry), new LineBasicMaterial({ color: INK })));
      this.bounds.union(part.geometry.boundingBox!);
      this.pieces.set(part.id, group);
      this.scene.add(group);
    }
    this.spread();
    this.paint();
    if (!before.equals(this.bounds)) this.fit();
    else this.draw();
  }

  choose(part: string | undefined): void {
    this.chosen = part;
    this.paint();
    this.draw();
  }

  /** Pulls the parts apart, from 0 (together) to 1. */
  pullApart(share: number): void {
    this.apart = share;
    this.spread();
    this.fit();
  }

  seeThrough(on: boolean): void {
    this.through = on;
    this.paint();
    this.draw();
  }

  lookFrom(stand: keyof typeof STANDS): void {
    this.stand = STANDS[stand];
    this.fit(true);
  }

  zoom(factor: number): void {
    this.camera.zoom = Math.min(40, Math.max(0.2, this.camera.zoom * factor));
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  resize(width: number, height: number): void {
    if (width === 0 || height === 0) return;
    this.renderer.setSize(width, height, false);
    this.fit();
  }

  /** Brings the whole piece into sight; with `turn` also from the chosen stand. */
  fit(turn = false): void {
    if (this.bounds.isEmpty()) return;
    const centre = this.bounds.getCenter(new Vector3());
    const size = this.renderer.getSize(new Vector2());
    if (turn || this.camera.position.lengthSq() === 0) {
      this.camera.position.copy(centre).addScaledVector(this.stand.clone().normalize(), 5000);
    } else {
      const way = this.camera.position.clone().sub(this.controls.target).normalize();
      this.camera.position.copy(centre).addScaledVector(way, 5000);
    }
    this.controls.target.copy(centre);
    this.camera.lookAt(centre);
    this.camera.updateMatrixWorld();
    const seen = this.seenExtent();
    const span = Math.max(seen.x / size.x, seen.y / size.y) * 1.12;
    const [w, h] = [(span * size.x) / 2, (span * size.y) / 2];
    Object.assign(this.camera, { left: -w, right: w, top: h, bottom: -h, zoom: 1 });
    this.camera.updateProjectionMatrix();
    this.controls.update();
    this.draw();
  }

  dispose(): void {
    cancelAnimationFrame(this.asked);
    for (const group of this.pieces.values()) discard(group);
    this.controls.dispose();
    this.renderer.dispose();
  }

  /** Width and height of the parts as the camera sees them, in millimetres. */
  private seenExtent(): { readonly x: number; readonly y: number } {
    const whole = new Box3();
    for (const group of this.pieces.values()) whole.union(new Box3().setFromObject(group));
    const seen = new Box3();
    for (let i = 0; i < 8; i++) {
      const corner = new Vector3(
        i & 1 ? whole.max.x : whole.min.x,
        i & 2 ? whole.max.y : whole.min.y,
        i & 4 ? whole.max.z : whole.min.z,
      );
      seen.expandByPoint(corner.applyMatrix4(this.camera.matrixWorldInverse));
    }
    // The target is in the middle of the picture, so the larger half counts on both sides.
    const middle = this.controls.target.clone().applyMatrix4(this.camera.matrixWorldInverse);
    return {
      x: 2 * Math.max(seen.max.x - middle.x, middle.x - seen.min.x),
      y: 2 * Math.max(seen.max.y - middle.y, middle.y - seen.min.y),
    };
  }

  private spread(): void {
    const centre = this.bounds.getCenter(new Vector3());
    for (const group of this.pieces.values()) {
      const mesh = group.children[0] as Mesh<BufferGeometry>;
      const own = mesh.geometry.boundingBox!.getCenter(new Vector3());
      group.position.copy(own.sub(centre).multiplyScalar(this.apart * 0.9));
      group.updateMatrixWorld();
    }
  }

  private paint(): void {
    for (const [id, group] of this.pieces) {
      const [mesh, lines] = group.children as [Mesh, LineSegments];
      const skin = mesh.material as MeshLambertMaterial;
      const isChosen = id === this.chosen;
      skin.userData.wood ??= skin.color.clone();
      skin.color.copy(isChosen ? CHOSEN : skin.userData.wood);
      const clear = this.through && !isChosen;
      skin.transparent = clear;
      skin.opacity = clear ? 0.22 : 1;
      skin.depthWrite = !clear;
      skin.needsUpdate = true;
      (lines.material as LineBasicMaterial).color.set(isChosen ? '#1d4f76' : INK);
    }
  }

  private draw(): void {
    cancelAnimationFrame(this.asked);
    this.asked = requestAnimationFrame(() => this.renderer.render(this.scene, this.camera));
  }

  private listen(canvas: HTMLCanvasElement): void {
    let from: { x: number; y: number } | undefined;
    canvas.addEventListener('pointerdown', (e) => {
      from = { x: e.clientX, y: e.clientY };
    });
    canvas.addEventListener('pointerup', (e) => {
      if (!from || Math.hypot(e.clientX - from.x, e.clientY - from.y) > STILL) return;
      const box = canvas.getBoundingClientRect();
      const at = new Vector2(
        ((e.clientX - box.left) / box.width) * 2 - 1,
        1 - ((e.clientY - box.top) / box.height) * 2,
      );
      const ray = new Raycaster();
      ray.setFromCamera(at, this.camera);
      const meshes = [...this.pieces.values()].map((g) => g.children[0]!);
      this.picked(ray.intersectObjects(meshes, false)[0]?.object.parent?.name);
    });
  }
}

function discard(group: Group): void {
  group.removeFromParent();
  for (const child of group.children as (Mesh | LineSegments)[]) {
    child.geometry.dispose();
    (child.material as MeshLambertMaterial).dispose();
  }
}
