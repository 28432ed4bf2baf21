// @ts-check
/**
 * Our own line drawing of a vehicle, without any model in mind: its back, its front, and from
 * above. Pictures only; where the positions lie on it is board-geometry.js's concern.
 */
import { svg } from "lit-html";

/** All drawings are this wide: at 320 px of screen one unit is one pixel. */
export const DRAWING_WIDTH = 288;

const REAR = svg`
  <path class="car-tyre" d="M34 128h38v26q0 3-3 3H37q-3 0-3-3zM216 128h38v26q0 3-3 3h-32q-3 0-3-3z" />
  <path class="car-body" d="M64 12q8-8 24-8h112q16 0 24 8l20 40 12 14q6 8 6 18v50H26V84q0-10 6-18l12-14z" />
  <path class="car-glass" d="M84 16h120q6 0 8 6l10 28q1 4-3 4H69q-4 0-3-4l10-28q2-6 8-6z" />
  <path class="car-line" d="M92 46 128 24M104 48l28-17" />
  <path class="car-lamp" d="M28 76h34v22H26V84q0-4 2-8zM260 76h-34v22h36V84q0-4-2-8z" />
  <path class="car-plate" d="M108 72h72v20h-72z" />`;

const FRONT = svg`
  <path class="car-tyre" d="M34 128h38v26q0 3-3 3H37q-3 0-3-3zM216 128h38v26q0 3-3 3h-32q-3 0-3-3z" />
  <path class="car-body" d="M64 12q8-8 24-8h112q16 0 24 8l18 38 14 16q6 8 6 18v50H26V84q0-10 6-18l14-16z" />
  <path class="car-glass" d="M82 14h124q5 0 7 5l12 26q1 3-3 3H66q-4 0-3-3l12-26q2-5 7-5z" />
  <path class="car-line" d="M96 44l24-8M150 44l24-8M52 62q92-12 184 0" />
  <path class="car-lamp" d="M34 74q24-4 40 12l-6 12q-24 2-42-6v-8q0-6 8-10zM254 74q-24-4-40 12l6 12q24 2 42-6v-8q0-6-8-10z" />
  <path class="car-plate" d="M92 78h104l-8 16h-88z" /><path class="car-line" d="M98 86h92" />`;

/** @param {number} bottom where the bumper ends */
function bumper(bottom) {
  return svg`<path class="car-bumper"
    d="M14 104h260q8 0 8 9v${bottom - 128}q0 15-14 15H20q-14 0-14-15v-${bottom - 128}q0-9 8-9z" />`;
}

/**
 * One end of the vehicle with its bumper, whose upper edge is at 104.
 * @param {"rear"|"front"} end
 * @param {number} bottom
 */
export function vehicleEnd(end, bottom) {
  return svg`<g class="car car-end">${end === "front" ? FRONT : REAR}${bumper(bottom)}</g>`;
}

/**
 * An engine from above, lying across the picture.
 * @param {{left: number, right: number, top: number, bottom: number}} box
 */
export function engineAbove({ left, right, top, bottom }) {
  const [width, height] = [right - left, bottom - top];
  return svg`<g class="car">
    <rect class="car-tyre" x=${left - 8} y=${top + height / 4} width=${width + 16} height=${height / 2} rx="4" />
    <rect class="car-body" x=${left} y=${top} width=${width} height=${height} rx="12" />
    <path class="car-line" d="M${left + 10} ${top + 14}h${width - 20}M${left + 10} ${bottom - 14}h${width - 20}" />
  </g>`;
}

/**
 * The vehicle from above, front at the top.
 * @param {{left: number, right: number, top: number, bottom: number}} box
 */
export function vehicleAbove({ left, right, top, bottom }) {
  const middle = (left + right) / 2;
  const inner = { left: left + 44, right: right - 44 };
  const screen = top + (bottom - top) * 0.3;
  const back = bottom - (bottom - top) * 0.2;
  return svg`<g class="car">
    <path class="car-tyre" d="M${left - 7} ${top + 40}h20v38h-20zM${right - 13} ${top + 40}h20v38h-20z
      M${left - 7} ${bottom - 74}h20v38h-20zM${right - 13} ${bottom - 74}h20v38h-20z" />
    <path class="car-body" d="M${left + 34} ${top}Q${middle} ${top - 10} ${right - 34} ${top}
      Q${right} ${top + 4} ${right} ${top + 44}V${bottom - 34}Q${right} ${bottom} ${right - 30} ${bottom}
      H${left + 30}Q${left} ${bottom} ${left} ${bottom - 34}V${top + 44}Q${left} ${top + 4} ${left + 34} ${top}z" />
    <path class="car-glass" d="M${inner.left - 14} ${screen}Q${middle} ${screen - 18} ${inner.right + 14} ${screen}
      L${inner.right - 2} ${screen + 26}Q${middle} ${screen + 14} ${inner.left + 2} ${screen + 26}z
      M${inner.left + 2} ${back - 20}H${inner.right - 2}L${inner.right + 8} ${back}H${inner.left - 8}z" />
    <path class="car-line" d="M${inner.left + 2} ${screen + 26}V${back - 20}M${inner.right - 2} ${screen + 26}V${back - 20}
      M${left + 12} ${screen - 4}l-14-8M${right - 12} ${screen - 4}l14-8" />
  </g>`;
}
