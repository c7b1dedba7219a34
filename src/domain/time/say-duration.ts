/** A length of time in the two largest units that matter: "2 d 3 h", "2 h 13 min", "15 min", "40 s". Never negative. */
export function sayDuration(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (minutes === 0) return `${seconds} s`;
  if (hours === 0) return `${minutes} min`;
  if (hours < 24) return `${hours} h${minutes % 60 === 0 ? '' : ` ${minutes % 60} min`}`;
  return `${Math.floor(hours / 24)} d${hours % 24 === 0 ? '' : ` ${hours % 24} h`}`;
}
