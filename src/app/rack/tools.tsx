import { type Tool, toolName } from '../../job/index.ts';
import { LengthField } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';

/** Sizes that a kind of tool has besides its accuracy, with their words. */
const SIZES: Readonly<Record<string, string>> = {
  kerf: 'kerf',
  step: 'set in steps of',
  reach: 'reach',
  reach45: 'at 45°',
  length: 'length',
  width: 'width',
  height: 'height',
};

/** The tools of the shop, with what each can be set to. */
export function Tools() {
  const tools = useApp((s) => s.history.job.shop.tools);
  return (
    <section>
      <h2>Tools</h2>
      <ul className="tools">
        {tools.map((t) => (
          <ToolLine key={t.id} tool={t} />
        ))}
      </ul>
    </section>
  );
}

function ToolLine({ tool }: { tool: Tool }) {
  const at = `shop/tools/${tool.id}`;
  const name = toolName(tool);
  const sizes = [['accuracy', 'true to'], ...Object.entries(SIZES)].filter(([field]) => field! in tool);
  return (
    <li>
      <strong>{name}</strong>
      {'count' in tool && `, ${tool.count} of them`}:
      {sizes.map(([field, words], i) => (
        <span key={field}>
          {' '}
          {words}{' '}
          <LengthField
            path={`${at}/${field}`}
            label={`${words} of ${name}`}
            {...(i < sizes.length - 1 ? { end: ',' } : {})}
          />
        </span>
      ))}
    </li>
  );
}
