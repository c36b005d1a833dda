import { joinMarks } from '../../setting-out/index.ts';
import { Length } from '../numbers/number.tsx';
import { useApp, useDesk } from '../state/use-desk.ts';
import { featureWords } from './feature-words.ts';

/** What is known of the chosen part, on a slip beside the picture. */
export function PartSlip() {
  const desk = useDesk();
  const setOut = useApp((s) => s.setOut);
  const part = useApp((s) => s.setOut.parts.find((p) => p.id === s.part));
  const lots = useApp((s) => s.history.job.shop.rack.lots);
  if (!part) return null;
  const joints = setOut.joints.filter((j) => j.part === part.id || j.mate === part.id);
  const glued = setOut.gluedPanels.find((g) => g.panel === part.id);
  const sizes = [
    ['Length', part.length],
    ['Width', part.width],
    ['Thickness', part.thickness],
  ] as const;
  return (
    <section className="part-slip" aria-label={`Part ${part.mark}`}>
      <header>
        <strong>
          <span className="mark">{part.mark}</span> {part.name}
        </strong>
        <button type="button" className="close" aria-label="Close" onClick={() => desk.choose(undefined)}>
          ×
        </button>
      </header>
      <dl>
        {sizes.map(([name, t]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <Length of={setOut} t={t} />
            </dd>
          </div>
        ))}
      </dl>
      <p>
        {lots.find((l) => l.id === part.lot)?.name ?? part.lot}
        {glued && `, glued up from ${joinMarks(glued.boards.map((b) => b.mark))}`}
      </p>
      {part.features.length > 0 && <p>{featureWords(part.features)}</p>}
      <p className="faint">
        {joints.length} {joints.length === 1 ? 'joint' : 'joints'} with{' '}
        {[...new Set(joints.map((j) => (j.part === part.id ? j.mate : j.part)))]
          .map((id) => setOut.parts.find((p) => p.id === id)?.mark)
          .sort()
          .join(', ')}
      </p>
    </section>
  );
}
