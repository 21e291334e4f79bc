/**
 * Equal parts of two values as the very same objects: an answer of the worker brings everything anew, and by this what shows a
 * part of it that came out the same need not be told. For plain data and typed arrays, without cycles.
 */

/** `now`, with every part that equals its counterpart in `before` taken from there; `before` itself where all is equal. */
export function sharing<T>(before: unknown, now: T): T {
  if (Object.is(before, now) || !isObject(before) || !isObject(now)) return now;
  if (isColumn(now)) return isColumn(before) && sameColumn(before, now) ? (before as T) : now;
  if (isColumn(before) || Array.isArray(before) !== Array.isArray(now)) return now;
  return sharedMembers(before, now) as T;
}

type Members = Record<string, unknown>;
type Column = ArrayLike<number> & ArrayBufferView;

function sharedMembers(before: object, now: object): object {
  const old = before as Members;
  const copy: Members = Array.isArray(now) ? ([...now] as unknown as Members) : { ...(now as Members) };
  const keys = Object.keys(copy);
  let same = keys.length === Object.keys(old).length;
  for (const key of keys) {
    copy[key] = sharing(old[key], copy[key]);
    if (!Object.is(copy[key], old[key]) || !Object.hasOwn(old, key)) same = false;
  }
  return same ? before : copy;
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

function isColumn(value: object): value is Column {
  return ArrayBuffer.isView(value) && !(value instanceof DataView);
}

function sameColumn(a: Column, b: Column): boolean {
  if (a.length !== b.length || a.constructor !== b.constructor) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
