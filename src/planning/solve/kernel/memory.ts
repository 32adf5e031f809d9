// The kernel's memory: arrays laid one after the other from the start of the heap, all given back at once. An array is its
// address; `int` and `real` read it by index, unchecked, so indexes must be in range by construction.

let top: i32 = 0;

/** Forgets every array. */
export function clearMemory(): void {
  top = (i32(__heap_base) + 7) & ~7;
}

/** So many whole numbers of 32 bits, all 0. */
export function newInts(count: i32): i32 {
  return allocate(count << 2);
}

/** So many whole numbers of 64 bits, all 0. */
export function newLongs(count: i32): i32 {
  return allocate(count << 3);
}

/** So many floating-point numbers of 64 bits, all 0. */
export function newReals(count: i32): i32 {
  return allocate(count << 3);
}

function allocate(bytes: i32): i32 {
  const at = top;
  top = (top + bytes + 7) & ~7;
  const missing = top - (memory.size() << 16);
  if (missing > 0) memory.grow((missing + 65535) >> 16);
  memory.fill(at, 0, bytes);
  return at;
}

export function int(array: i32, index: i32): i32 {
  return load<i32>(array + (index << 2));
}

export function setInt(array: i32, index: i32, value: i32): void {
  store<i32>(array + (index << 2), value);
}

export function addInt(array: i32, index: i32, by: i32): i32 {
  const value = load<i32>(array + (index << 2)) + by;
  store<i32>(array + (index << 2), value);
  return value;
}

export function long(array: i32, index: i32): u64 {
  return load<u64>(array + (index << 3));
}

export function setLong(array: i32, index: i32, value: u64): void {
  store<u64>(array + (index << 3), value);
}

export function real(array: i32, index: i32): f64 {
  return load<f64>(array + (index << 3));
}

export function setReal(array: i32, index: i32, value: f64): void {
  store<f64>(array + (index << 3), value);
}

export function fillInts(array: i32, count: i32, value: i32): void {
  for (let k = 0; k < count; k++) setInt(array, k, value);
}

export function copyInts(to: i32, from: i32, count: i32): void {
  memory.copy(to, from, count << 2);
}

export function copyReals(to: i32, from: i32, count: i32): void {
  memory.copy(to, from, count << 3);
}
