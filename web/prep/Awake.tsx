import { useEffect, useState } from "react";
import { say } from "../texts/say.ts";

/** Keeps the screen on while a card is open, where the device can; a lock is lost when the page is hidden. */
export function Awake() {
  const [isAwake, setAwake] = useState(false);
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let isGone = false;
    const ask = async () => {
      if (!("wakeLock" in navigator) || document.visibilityState !== "visible") return;
      lock = await navigator.wakeLock.request("screen").catch(() => undefined);
      if (isGone) await lock?.release();
      else setAwake(lock !== undefined);
    };
    void ask();
    document.addEventListener("visibilitychange", ask);
    return () => {
      isGone = true;
      document.removeEventListener("visibilitychange", ask);
      void lock?.release();
    };
  }, []);
  return isAwake ? <p className="soft small no-print">{say("prep.screenStays")}</p> : null;
}
