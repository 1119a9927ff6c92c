const BEEPS = 3;
const BEEP_S = 0.25;
const PITCH_HZ = 880;

/** Three beeps and, where the device can, a buzz: a kitchen does not look at the screen. Silent where sound is forbidden. */
export function soundSignal(): void {
  navigator.vibrate?.([300, 150, 300]);
  if (typeof AudioContext === "undefined") return;
  const audio = new AudioContext();
  for (let beep = 0; beep < BEEPS; beep += 1) {
    const tone = audio.createOscillator();
    tone.frequency.value = PITCH_HZ;
    tone.connect(audio.destination);
    tone.start(audio.currentTime + beep * 2 * BEEP_S);
    tone.stop(audio.currentTime + (beep * 2 + 1) * BEEP_S);
  }
  setTimeout(() => void audio.close(), BEEPS * 2 * BEEP_S * 1000 + 500);
}
