/** Minutes as `25 min`, `2 h 5 min` or, from two days on, `3 days`. */
export function timeWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  if (whole >= 2 * 1440 && whole % 1440 === 0) return `${whole / 1440} days`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
}
