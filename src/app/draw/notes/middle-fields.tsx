import { treeOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { useApp } from '../../state/use-desk.ts';

/** The middle that a row of holes or handles stands about: its own, or that of something in its case. */
export function AboutField({ id, own }: { id: string; own: string }) {
  const tree = treeOf(useApp((s) => s.history.job));
  const box = tree.caseOf(id);
  return (
    <ChoiceField
      path={`design/records/${id}/about`}
      label={`Middle that ${id} stands about`}
      choices={[
        ['', own],
        ...(['opening', 'shelf', 'divider'] as const)
          .flatMap((kind) => tree.all(kind))
          .filter((r) => tree.caseOf(r.id) === box)
          .map((r) => [r.id, `that of ${r.id}`] as const),
      ]}
      end=","
    />
  );
}

/** What a place along a row is measured to: what stands nearest, or the row's middle. */
export function MeasuredField({ id, nearest }: { id: string; nearest: string }) {
  return (
    <ChoiceField
      path={`design/records/${id}/measured`}
      label={`What places of ${id} are measured to`}
      choices={[
        ['', nearest],
        ['middle', 'to the row’s middle'],
      ]}
      end=","
    />
  );
}
