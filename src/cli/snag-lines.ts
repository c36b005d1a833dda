import { type Snag, sourceWords } from '../snag/index.ts';

const WORDS = { stop: 'STOP', mind: 'Mind', note: 'Note' } as const;

/** Snags for reading: level, sentence, figures, rule, cure. */
export function snagLines(snags: readonly Snag[]): string {
  return snags
    .map((s) => {
      const lines = [`${WORDS[s.level]}  ${s.sentence}`];
      if (s.rule) lines.push(`      Rule: ${s.rule.says} (${sourceWords(s.rule)}).`);
      for (const cure of s.cures) lines.push(`      Cure: ${cure.says}`);
      return lines.join('\n');
    })
    .join('\n');
}

/** Exit code 1 when any snag stops the work. */
export function hasStop(snags: readonly Snag[]): boolean {
  return snags.some((s) => s.level === 'stop');
}
