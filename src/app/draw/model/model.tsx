import { useEffect, useRef, useState } from 'react';
import { useApp, useDesk } from '../../state/use-desk.ts';
import { PartSlip } from '../part-slip.tsx';
import { fromBlank, fromMesh } from './part-geometry.ts';
import { ModelScene, type STANDS } from './scene.ts';

const LOOKS: readonly (readonly [keyof typeof STANDS, string])[] = [
  ['corner', 'Corner'],
  ['front', 'Front'],
  ['side', 'Side'],
  ['above', 'Above'],
  ['behind', 'Behind'],
];

/** The piece in the round: turn it, come nearer, pull it apart, click a part. */
export function Model() {
  const desk = useDesk();
  const setOut = useApp((s) => s.setOut);
  const meshes = useApp((s) => (s.meshes?.of === s.setOut ? s.meshes : undefined));
  const chosen = useApp((s) => s.part);
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [scene, setScene] = useState<ModelScene>();
  const [blind, setBlind] = useState(false);
  const [apart, setApart] = useState(0);
  const [through, setThrough] = useState(false);

  useEffect(() => {
    let made: ModelScene;
    try {
      made = new ModelScene(canvas.current!, (part) => desk.choose(part));
    } catch {
      setBlind(true);
      return;
    }
    setScene(made);
    const watch = new ResizeObserver(([entry]) =>
      made.resize(entry!.contentRect.width, entry!.contentRect.height),
    );
    watch.observe(frame.current!);
    return () => {
      watch.disconnect();
      made.dispose();
      setScene(undefined);
    };
  }, [desk]);

  useEffect(() => {
    const skins = new Map(meshes?.parts.map((m) => [m.part, m]));
    scene?.show(
      setOut.parts.map((part) => {
        const skin = skins.get(part.id);
        return {
          id: part.id,
          wood: part.form,
          geometry: skin ? fromMesh(skin) : fromBlank(setOut, part),
        };
      }),
    );
  }, [scene, setOut, meshes]);
  useEffect(() => scene?.choose(chosen), [scene, chosen]);
  useEffect(() => scene?.pullApart(apart), [scene, apart]);
  useEffect(() => scene?.seeThrough(through), [scene, through]);

  return (
    <figure className="model">
      <div className="model-frame" ref={frame}>
        <canvas
          ref={canvas}
          role="img"
          aria-label={`The piece in the round, ${setOut.parts.length} parts${meshes ? ', with every groove and hole' : ''}. The parts are also in the list below.`}
          data-ready={meshes !== undefined}
        />
        {blind && (
          <p className="wrong">This browser can’t draw in three dimensions. The views below can be used.</p>
        )}
      </div>
      <figcaption className="looks">
        <span>Look from</span>
        {LOOKS.map(([stand, words]) => (
          <button key={stand} type="button" className="act quiet" onClick={() => scene?.lookFrom(stand)}>
            {words}
          </button>
        ))}
        <span className="looks-more">
          <button type="button" className="act quiet" aria-label="Nearer" onClick={() => scene?.zoom(1.25)}>
            +
          </button>
          <button type="button" className="act quiet" aria-label="Farther" onClick={() => scene?.zoom(0.8)}>
            −
          </button>
          <button type="button" className="act quiet" onClick={() => scene?.fit()}>
            All of it
          </button>
        </span>
        <label className="slide">
          Pull apart
          <input
            type="range"
            min="0"
            max="1"
            step="0.02"
            value={apart}
            onChange={(e) => setApart(Number(e.target.value))}
          />
        </label>
        <label>
          <input type="checkbox" checked={through} onChange={(e) => setThrough(e.target.checked)} /> See
          through
        </label>
      </figcaption>
      <PartSlip />
    </figure>
  );
}
