export function causesOf(_: unknown): [] {
  return [];
}
