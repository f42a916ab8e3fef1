/**
 * A second solution of the loaded sheet, independent of src: fibers through the thickness instead of closed forms,
 * Runge-Kutta steps along the sheet instead of quadrature over curvature, the moment of friction put on the sheet's
 * face as it is, and shooting on the shoulder's reaction. Same idealization: a beam, shoulder and nose as arcs.
 */
export interface ShootingCase {
  readonly K: number;
  readonly n: number;
  readonly E: number;
  readonly nu: number;
  readonly t: number;
  readonly V: number;
  readonly nose: number;
  readonly shoulder: number;
  readonly dieAngle: number;
  readonly mu: number;
}

/**
 * Moment over curvature of 200 fibers, each returned to the Swift surface by bisection; tabulated over ln curvature.
 */
function momentTable(c: ShootingCase, tightest: number) {
  const f = 2 / Math.sqrt(3);
  const Eprime = c.E / (1 - c.nu ** 2);
  const e0 = (c.K / c.E) ** (1 / (1 - c.n));
  const stress = (strain: number) => {
    if (Eprime * strain <= f * c.K * e0 ** c.n) return Eprime * strain;
    let [low, high] = [0, strain];
    for (let i = 0; i < 45; i++) {
      const plastic = (low + high) / 2;
      if (Eprime * (strain - plastic) > f * c.K * (e0 + f * plastic) ** c.n) low = plastic;
      else high = plastic;
    }
    return Eprime * (strain - (low + high) / 2);
  };
  const fibers = 200;
  const moment = (k: number) => {
    let sum = 0;
    for (let i = 0; i < fibers; i++) {
      const y = ((i + 0.5) / fibers) * (c.t / 2);
      sum += stress(k * y) * y;
    }
    return (2 * sum * c.t) / (2 * fibers);
  };
  const curvatures: number[] = [];
  const moments: number[] = [];
  for (let i = 0; i <= 500; i++) {
    curvatures.push(tightest * 1e-4 ** (1 - i / 500));
    moments.push(moment(curvatures[i]!));
  }
  const curvatureAt = (wanted: number) => {
    if (wanted <= moments[0]!) return (curvatures[0]! * wanted) / moments[0]!;
    let [low, high] = [0, moments.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (moments[middle]! <= wanted) low = middle;
      else high = middle;
    }
    const share = Math.log(wanted / moments[low]!) / Math.log(moments[high]! / moments[low]!);
    return curvatures[low]! * (curvatures[high]! / curvatures[low]!) ** share;
  };
  return { curvatureAt, moment };
}

export function shoot(c: ShootingCase, halfAngle: number) {
  const s = c.nose + c.t / 2;
  const { curvatureAt, moment } = momentTable(c, 20 / c.t);
  const [sin, cos] = [Math.sin(halfAngle), Math.cos(halfAngle)];
  const center = c.V / 2 + c.shoulder * Math.tan(((90 - c.dieAngle / 2) / 2) * (Math.PI / 180));
  const contactX = center - (c.shoulder + c.t / 2) * sin;
  const contactY = -c.shoulder + (c.shoulder + c.t / 2) * cos;
  const EI = ((c.E / (1 - c.nu ** 2)) * c.t ** 3) / 12;
  const noseMoment = moment(1 / s);

  /** Walks from the die contact to the punch under a normal force N on the shoulder. */
  const walk = (N: number) => {
    let [turn, M, x, y, recovered] = [0, (c.mu * N * c.t) / 2, contactX, contactY, 0];
    const h = contactX / 2000;
    for (let i = 0; i < 20000 && turn < halfAngle && M < noseMoment; i++) {
      // Normal N up-left and friction outwards along the flange, resolved on the sheet turned inwards by `turn`.
      const rate = (at: number) => N * Math.cos(at) + c.mu * N * Math.sin(at);
      const k1 = curvatureAt(M);
      const half = turn + (k1 * h) / 2;
      const middle = M + (rate(turn) * h) / 2;
      const k2 = curvatureAt(middle);
      const slope = halfAngle - half;
      M += rate(turn + (k2 * h) / 2) * h;
      x -= Math.cos(slope) * h;
      y -= Math.sin(slope) * h;
      turn += k2 * h;
      recovered += (middle / EI) * h;
    }
    const wrap = Math.max(0, halfAngle - turn);
    return {
      miss: x - s * Math.sin(wrap),
      force: 2 * N * (cos + c.mu * sin),
      depth: c.t / 2 - (y - s * (1 - Math.cos(wrap))),
      springback: recovered + (wrap * s * noseMoment) / EI,
      wrap,
    };
  };
  // A small force leaves the arm too long, so that it reaches past the middle before it has turned far enough.
  let [low, high] = [1e-3 * (noseMoment / contactX), 20 * (noseMoment / contactX)];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (walk(middle).miss < 0) low = middle;
    else high = middle;
  }
  return walk((low + high) / 2);
}
