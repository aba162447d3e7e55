/** A 3 x 3 matrix, row by row. Plain numbers: these run on every move of a pointer. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];

export type Vector3 = readonly [number, number, number];

export function multiply(a: Matrix3, b: Matrix3): Matrix3 {
  return [
    a[0] * b[0] + a[1] * b[3] + a[2] * b[6],
    a[0] * b[1] + a[1] * b[4] + a[2] * b[7],
    a[0] * b[2] + a[1] * b[5] + a[2] * b[8],
    a[3] * b[0] + a[4] * b[3] + a[5] * b[6],
    a[3] * b[1] + a[4] * b[4] + a[5] * b[7],
    a[3] * b[2] + a[4] * b[5] + a[5] * b[8],
    a[6] * b[0] + a[7] * b[3] + a[8] * b[6],
    a[6] * b[1] + a[7] * b[4] + a[8] * b[7],
    a[6] * b[2] + a[7] * b[5] + a[8] * b[8],
  ];
}

export function transposed(m: Matrix3): Matrix3 {
  return [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];
}

export function transform(m: Matrix3, x: number, y: number, z: number): Vector3 {
  return [m[0] * x + m[1] * y + m[2] * z, m[3] * x + m[4] * y + m[5] * z, m[6] * x + m[7] * y + m[8] * z];
}

/** Transposed cofactors: the inverse up to the factor `determinant`, which a homography does not care about. */
export function adjugate(m: Matrix3): Matrix3 {
  return [
    m[4] * m[8] - m[5] * m[7],
    m[2] * m[7] - m[1] * m[8],
    m[1] * m[5] - m[2] * m[4],
    m[5] * m[6] - m[3] * m[8],
    m[0] * m[8] - m[2] * m[6],
    m[2] * m[3] - m[0] * m[5],
    m[3] * m[7] - m[4] * m[6],
    m[1] * m[6] - m[0] * m[7],
    m[0] * m[4] - m[1] * m[3],
  ];
}

/** a + factor x b */
export function addScaled(a: Matrix3, b: Matrix3, factor: number): Matrix3 {
  return [
    a[0] + factor * b[0],
    a[1] + factor * b[1],
    a[2] + factor * b[2],
    a[3] + factor * b[3],
    a[4] + factor * b[4],
    a[5] + factor * b[5],
    a[6] + factor * b[6],
    a[7] + factor * b[7],
    a[8] + factor * b[8],
  ];
}

export function scale(m: Matrix3, factor: number): Matrix3 {
  return addScaled([0, 0, 0, 0, 0, 0, 0, 0, 0], m, factor);
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function norm(a: Vector3): number {
  return Math.sqrt(dot(a, a));
}
