import * as v from 'valibot';
import { plug } from '../../materials/index.ts';
import { parseLength } from '../../measure/index.ts';
import { baseFields } from './base-fields.ts';
import { onPanel } from './on-panel.ts';

/** A plug of the table by its name, or what one measures across. */
const PlugText = v.pipe(
  v.string(),
  v.check(
    (text) => {
      const read = parseLength(text, 'mm');
      return plug(text) !== undefined || (read.ok && read.value > 0);
    },
    (issue) => `“${issue.input}” is neither a plug that is known here nor a size`,
  ),
);

/** A hole for a cable through a panel, wide enough for the plug at its end. */
export const CableRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('cable'),
  ...onPanel,
  /** What must go through: a plug of the table, or its size across the corners. */
  plug: PlugText,
});
export type CableRecord = v.InferOutput<typeof CableRecord>;
