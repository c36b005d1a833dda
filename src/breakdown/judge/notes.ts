import type { Finding, FindingCode, Verdict } from './verdict.ts';

/** Collects findings. */
export class Notes {
  private readonly found: Finding[] = [];

  add(code: FindingCode, at: string, what: string): void {
    this.found.push({ code, at, says: `${at} ${what}.` });
  }

  verdict(): Verdict {
    return { holds: this.found.length === 0, findings: this.found };
  }
}
