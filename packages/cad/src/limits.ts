/** What a file may ask of the reader. Far above real machines, low enough that a hostile file is refused early. */
export const limits = {
  /** Bytes of the file itself. */
  fileBytes: 1 << 30,
  /** Bytes of a zip archive once unpacked. */
  unpackedBytes: 1 << 30,
  /** Unpacked bytes per packed byte in one archive member; deflate cannot exceed 1032. */
  unpackRatio: 500,
  /** Bytes of one body's text that the CAD kernel is given. */
  bodyBytes: 256 << 20,
  /** Triangles in all shapes together. */
  triangles: 30_000_000,
  /** Placed bodies. */
  parts: 100_000,
  /** Assemblies inside assemblies, or lists inside lists. */
  depth: 100,
  /** Largest coordinate that a machine can have: 10 km, in mm. Beyond it kernels hang or lose all precision. */
  coordinate_mm: 1e7,
} as const;
