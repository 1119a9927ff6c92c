import { say, sayWith } from "../texts/say.ts";
import { TextSetting } from "./Setting.tsx";
import type { Settings } from "./use-settings.ts";

/**
 * When the day ends, and what was written in the book by currency and time zone. Those two are shown and not changed here:
 * prices are not converted, and every moment entered would come to lie hours beside what the clock in the bar showed.
 */
export function ClockAndMoney({ settings }: { settings: Settings }) {
  const { currency, timeZone } = settings.base;
  return (
    <section>
      <h2>{say("venue.clock")}</h2>
      <div className="settings-fields">
        <TextSetting settings={settings} place="dayEnds" type="time" />
      </div>
      <dl className="settings-fixed">
        <div>
          <dt>{say("people.currency")}</dt>
          <dd>{currency}</dd>
        </div>
        <div>
          <dt>{say("people.timeZone")}</dt>
          <dd>{timeZone}</dd>
        </div>
      </dl>
      <p className="settings-lead">
        {sayWith("venue.fixed", {
          export: <code>npm run -s ullage -- export my-bar</code>,
          file: <code>venue.json</code>,
          load: <code>npm run -s ullage -- load my-bar</code>,
        })}
      </p>
    </section>
  );
}
