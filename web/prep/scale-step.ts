import { useDeviceSetting } from "../parts/use-device-setting.ts";

/** Steps of kitchen scales, in g. */
export const SCALE_STEPS = [0.1, 1, 2, 5, 10] as const;

/** The step of this kitchen's scale, and a setter of it as text. */
export function useScaleStep(): [stepG: number, set: (step: string) => void] {
  const [stored, store] = useDeviceSetting("scale-step", "1");
  return [SCALE_STEPS.find((step) => String(step) === stored) ?? 1, store];
}
