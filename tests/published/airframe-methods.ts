/** How the kernel answers the published cases of wing and drag: one entry per kind of case. */
import { preloaded } from '../../kernel/library/index.js'
import type { Case } from './cases.js'

const { drag, u, wing } = preloaded
type Inputs = Case['inputs']

export const at = (inputs: Inputs, key: string): number => {
  const value = inputs[key]
  if (value === undefined) throw new Error(`the case lacks ${key}`)
  return value
}

/** Angle at which lattices are asked; their slopes do not depend on it. */
const angleOfAttack = 0.05
const fine = { spanwise: 40, chordwise: 8, angleOfAttack }

const warren = {
  semiSpan: Math.SQRT2,
  rootChord: 1.5,
  tipChord: 0.5,
  sweepLeadingEdge: 53.5431549 * u.deg,
}

function rectangular(inputs: Inputs) {
  const surface = { semiSpan: at(inputs, 'AR') / 2, rootChord: 1, tipChord: 1, sweepLeadingEdge: 0 }
  return wing.lattice({ surfaces: [surface], ...fine })
}

/** Aspect ratio 5, 45 degrees, untapered. */
const bertin = { semiSpan: 2.5, rootChord: 1, tipChord: 1, sweepLeadingEdge: 45 * u.deg }

/** A circle of radius 1 by stations that crowd towards the tip. */
function circularWing() {
  const stations = Array.from({ length: 241 }, (_, index) => {
    const y = Math.sin(((index / 240) * Math.PI) / 2)
    const half = Math.sqrt(Math.max(0, 1 - y * y))
    return { y, leadingEdge: 1 - half, chord: 2 * half }
  })
  return wing.lattice({ surfaces: [{ stations }], spanwise: 40, chordwise: 10, angleOfAttack })
}

function line(inputs: Inputs, more = {}) {
  return wing.liftingLine({
    aspectRatio: at(inputs, 'AR'),
    taper: at(inputs, 'taper'),
    sectionLiftSlope: at(inputs, 'a0_per_rad'),
    ...more,
  })
}

function frictionOf(inputs: Inputs, method: string): number {
  return drag.skinFriction({ reynolds: at(inputs, 'Re'), method })
}

function worked(inputs: Inputs): number {
  const { parts } = drag.buildUp(
    [
      {
        name: 'part',
        wettedArea: 1,
        length: at(inputs, 'length_m'),
        laminarShare: at(inputs, 'laminar_fraction'),
      },
    ],
    {
      speed: at(inputs, 'V_m_s'),
      density: at(inputs, 'rho_kg_m3'),
      dynamicViscosity: at(inputs, 'mu_Pa_s'),
    },
  )
  return parts[0]?.skinFriction ?? Number.NaN
}

function wingForm(inputs: Inputs, method: 'Raymer' | 'Torenbeek' | 'Hoerner'): number {
  const { xc_max_t: thicknessAt } = inputs
  return drag.wingFormFactor({
    thickness: at(inputs, 't_c'),
    method,
    ...(thicknessAt === undefined ? {} : { thicknessAt }),
  })
}

function gust(inputs: Inputs) {
  return wing.gustLoadFactor({
    wingLoading: at(inputs, 'wing_loading_N_m2'),
    meanChord: at(inputs, 'c_m'),
    liftCurveSlope: at(inputs, 'a_per_rad'),
    speed: at(inputs, 'V_EAS_m_s'),
    gustSpeed: at(inputs, 'U_de_m_s'),
    density: at(inputs, 'rho_kg_m3'),
  })
}

function balance(inputs: Inputs) {
  return wing.trim({
    liftCurveSlope: at(inputs, 'a_wb_per_deg') / u.deg,
    zeroLiftMoment: at(inputs, 'CM_ac_wb'),
    gravityBehindCentre: at(inputs, 'h_minus_hac'),
    tailVolume: at(inputs, 'V_H'),
    tailLiftCurveSlope: at(inputs, 'a_t_per_deg') / u.deg,
    tailIncidence: at(inputs, 'i_t_deg') * u.deg,
    downwashSlope: at(inputs, 'deps_dalpha'),
    downwashAtZeroLift: at(inputs, 'eps0_deg') * u.deg,
  })
}

function neutral(inputs: Inputs): number {
  return wing.neutralPoint({
    liftCurveSlope: at(inputs, 'a_wb_per_deg') / u.deg,
    aerodynamicCentre: at(inputs, 'h_ac_wb'),
    tailVolume: at(inputs, 'V_H'),
    tailLiftCurveSlope: at(inputs, 'a_t_per_deg') / u.deg,
    downwashSlope: at(inputs, 'deps_dalpha'),
  })
}

/** The worked aeroplane of a course: positions instead of a tail volume; its two corrections are the notebook's, not the kernel's. */
function correctedNeutralPoint(inputs: Inputs): number {
  const share = at(inputs, 'S_h_m2') / at(inputs, 'S_w_m2')
  const point = wing.neutralPoint({
    liftCurveSlope: at(inputs, 'CLa_w'),
    aerodynamicCentre: at(inputs, 'Xac_w'),
    tailVolume: (share * at(inputs, 'tail_arm_m')) / at(inputs, 'mac_m'),
    tailLiftCurveSlope: at(inputs, 'CLa_h'),
    downwashSlope: 1 - at(inputs, 'dah_da'),
    tailPressureRatio: at(inputs, 'eta_h'),
    tailAreaShare: share,
    bodyPitchSlope: at(inputs, 'CMa_fus'),
  })
  return point * (1 - 0.035) * (1 - (0.02 * at(inputs, 'prop_dist_m')) / at(inputs, 'mac_m'))
}

const section = (inputs: Inputs) => wing.thinAerofoil({ section: String(at(inputs, 'digits')) })
const estimates = (inputs: Inputs) =>
  wing.spanEfficiencyEstimates({
    aspectRatio: at(inputs, 'AR'),
    taper: inputs.taper ?? 0.5,
    thickness: inputs.t_c ?? 0.15,
    mach: inputs.M ?? 0,
    bodyWidthShare: inputs.d_fus_over_b ?? 0,
    wingEngines: inputs.N_wing_engines ?? 0,
    profileFactor: inputs.k_eD0 ?? 0.804,
  })

export const methods: readonly [RegExp, (inputs: Inputs) => number][] = [
  [/^cf_lam_/, (i) => frictionOf(i, 'laminar')],
  [/^cf_ps_/, (i) => frictionOf(i, 'Prandtl-Schlichting')],
  [/^cf_ks_/, (i) => frictionOf(i, 'Karman-Schoenherr')],
  [/^cf_ittc_/, (i) => frictionOf(i, 'ITTC-1957')],
  [/^dragbuild_cf_/, worked],
  [/^ff_raymer_body_old_/, (i) => drag.bodyFormFactor({ fineness: at(i, 'fineness'), method: 'Raymer older' })],
  [/^ff_raymer_body_/, (i) => drag.bodyFormFactor({ fineness: at(i, 'fineness') })],
  [/^ff_torenbeek_body_/, (i) => drag.bodyFormFactor({ fineness: at(i, 'fineness'), method: 'Torenbeek' })],
  [/^ff_hoerner_body_/, (i) => drag.bodyFormFactor({ fineness: at(i, 'fineness'), method: 'Hoerner' })],
  [/^ff_raymer_/, (i) => wingForm(i, 'Raymer')],
  [/^ff_torenbeek_wing_/, (i) => wingForm(i, 'Torenbeek')],
  [/^ff_hoerner_wing_/, (i) => wingForm(i, 'Hoerner')],
  [/^gear_nr485_/, (i) => drag.areaOf({ drag: at(i, 'D_N'), speed: at(i, 'V_m_s'), density: at(i, 'rho_kg_m3') })],
  [/^elliptic_cla_/, (i) => wing.liftCurveSlope({ aspectRatio: at(i, 'AR'), method: 'lifting line' })],
  [/^helmbold_/, (i) => wing.liftCurveSlope({ aspectRatio: at(i, 'AR') })],
  [/^llt_cla_/, (i) => line(i).liftCurveSlope],
  [/^llt_delta_/, (i) => line(i).delta],
  [/^llt_tau_/, (i) => line(i).tau],
  [/^llt4_A1$/, (i) => line(i, { terms: 4 }).liftCurveSlope / (Math.PI * at(i, 'AR'))],
  [/^warren12_cma$/, () => wing.lattice({ surfaces: [warren], ...fine }).pitchCurveSlope],
  [/^warren12_/, () => wing.lattice({ surfaces: [warren], ...fine }).liftCurveSlope],
  [
    /^bertin_swept_1x4$/,
    () => wing.lattice({ surfaces: [bertin], spanwise: 4, chordwise: 1, angleOfAttack, tipInset: 0 }).liftCurveSlope,
  ],
  [/^bertin_swept_converged$/, () => wing.lattice({ surfaces: [bertin], ...fine }).liftCurveSlope],
  [/^vlm_rect_cla_/, (i) => rectangular(i).liftCurveSlope],
  [/^vlm_rect_xac_/, (i) => rectangular(i).aerodynamicCentre],
  [/^circular_wing_cla$/, () => circularWing().liftCurveSlope],
  [
    /^anderson_apd_2_[56](_slope)?$/,
    (i) =>
      wing.liftCurveSlope({
        aspectRatio: at(i, 'AR'),
        method: 'lifting line',
        sectionLiftSlope: at(i, 'a0_per_rad'),
        slopeEfficiency: at(i, 'e1'),
        mach: i.M ?? 0,
      }),
  ],
  [
    /^anderson_apd_2_5_CL$/,
    (i) => {
      const slope = wing.liftCurveSlope({
        aspectRatio: 6,
        method: 'lifting line',
        sectionLiftSlope: 6.02,
        slopeEfficiency: 0.95,
      })
      return slope * (at(i, 'alpha_deg') - at(i, 'alpha_L0_deg')) * u.deg
    },
  ],
  [
    /^anderson_apd_2_8$/,
    (i) => wing.liftCurveSlope({ aspectRatio: at(i, 'AR'), sectionLiftSlope: at(i, 'a0_per_rad') }),
  ],
  [
    /^anderson_fund_5_1_CL$/,
    (i) =>
      wing.liftCurveSlope({
        aspectRatio: at(i, 'AR'),
        method: 'lifting line',
        slopeEfficiency: 1 / (1 + at(i, 'tau')),
      }) *
      at(i, 'alpha_deg') *
      u.deg,
  ],
  [
    /^anderson_fund_5_1_CDi$/,
    (i) => {
      const spanEfficiency = 1 / (1 + at(i, 'delta'))
      const { inducedFactor } = drag.polar({ zeroLiftDrag: 0.02, aspectRatio: at(i, 'AR'), spanEfficiency })
      return inducedFactor * at(i, 'CL') ** 2
    },
  ],
  [
    /^datcom_tail_/,
    (i) =>
      wing.liftCurveSlope({
        aspectRatio: at(i, 'AR'),
        sweepHalfChord: at(i, 'sweep_deg') * u.deg,
        mach: at(i, 'M'),
        sectionLiftSlope: 2 * Math.PI * at(i, 'eta'),
      }),
  ],
  [/^oswald_raymer_/, (i) => estimates(i).raymer],
  [/^oswald_howe_/, (i) => estimates(i).howe],
  [/^oswald_nita_/, (i) => estimates(i).nitaScholz],
  [/^thin_cmc4_/, (i) => section(i).quarterChordMoment],
  [/^thin_alphaL0_/, (i) => section(i).zeroLiftAngle / u.deg],
  [/^thin_flap_tau_/, (i) => wing.plainFlap({ chordShare: at(i, 'flap_chord_ratio') }).effectiveness],
  [
    // Both sides of a plate with half of it laminar, times the form factor: what a build-up says of a smooth section.
    /^naca0012_cd0_/,
    (i) =>
      2 * drag.skinFriction({ reynolds: at(i, 'Re'), laminarShare: 0.5 }) * drag.wingFormFactor({ thickness: 0.12 }),
  ],
  [/^n_man_/, (i) => wing.manoeuvreLoadFactor({ mass: at(i, 'mass_kg') }).positive],
  [/^gust_mu$/, (i) => gust(i).massRatio],
  [/^gust_Kg$/, (i) => gust(i).alleviation],
  [/^gust_n_/, (i) => gust(i).positive],
  [
    /^VC_min$/,
    (i) => wing.designSpeeds({ wingLoading: at(i, 'wing_loading_N_m2'), maximumLift: 1.5, loadFactor: 3.8 }).cruise,
  ],
  [
    /^stab_VH$/,
    (i) =>
      wing.tailVolume({
        tailArea: at(i, 'St_m2'),
        tailArm: at(i, 'lt_m'),
        wingArea: at(i, 'S_m2'),
        referenceLength: at(i, 'c_m'),
      }),
  ],
  [/^stab_CMcg$/, (i) => balance(i).momentAtZeroLift + balance(i).momentSlope * at(i, 'alpha_abs_deg') * u.deg],
  [/^stab_slope$/, (i) => balance(i).momentSlope * u.deg],
  [/^stab_CM0$/, (i) => balance(i).momentAtZeroLift],
  [/^stab_hn$/, neutral],
  [/^stab_SM$/, (i) => wing.staticMargin({ centreOfGravity: at(i, 'h'), neutralPoint: neutral(i) }).margin],
  [
    /^navion_hn$/,
    (i) =>
      wing.staticMargin({
        centreOfGravity: at(i, 'h_cg'),
        pitchCurveSlope: at(i, 'CM_alpha'),
        liftCurveSlope: at(i, 'CL_alpha'),
      }).neutralPoint,
  ],
  [/^raymer_np_corrected$/, correctedNeutralPoint],
]
