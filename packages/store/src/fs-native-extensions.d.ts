declare module 'fs-native-extensions' {
  /** Takes the advisory lock of an open file; false when another process holds it. */
  export function tryLock(fd: number): boolean;
}
