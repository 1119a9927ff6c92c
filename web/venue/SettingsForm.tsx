import { type FormEvent, useEffect, useRef } from "react";
import { Button } from "../parts/Button.tsx";
import { Problems, problemsOf } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { AreaTemperatures } from "./AreaTemperatures.tsx";
import { ClockAndMoney } from "./ClockAndMoney.tsx";
import { ChoiceSetting, FigureSetting, TextSetting } from "./Setting.tsx";
import { countryNamed } from "./setting-words.ts";
import { HOUSE_MEASURES, isPlace, reachesBack, THRESHOLDS } from "./settings.ts";
import { placeNamed, type Settings, useSettings } from "./use-settings.ts";

const SHOWN = ["ml", "cl", "oz"] as const;

/** Every setting in sections, from what is changed lightly to what past weeks hang on; one button saves them all. */
export function SettingsForm() {
  const settings = useSettings();
  const form = useRef<HTMLFormElement>(null);
  const { save, wrong, meanwhile, submit } = settings;
  useEffect(() => {
    if (save.error !== null || wrong.length > 0 || meanwhile.length > 0)
      form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [save.error, wrong, meanwhile]);
  const country = countryNamed(settings.textOf("country").trim());
  const send = (event: FormEvent) => {
    event.preventDefault();
    submit();
  };
  return (
    <form ref={form} className="settings" noValidate onSubmit={send}>
      <section>
        <h2>{say("venue.theBar")}</h2>
        <div className="settings-fields">
          <TextSetting settings={settings} place="name" />
          <ChoiceSetting settings={settings} place="show" options={SHOWN} />
          <FigureSetting settings={settings} place="serviceLevel" />
        </div>
      </section>
      <section>
        <h2>{say("venue.holidays")}</h2>
        <div className="settings-fields">
          <TextSetting
            settings={settings}
            place="country"
            maxLength={2}
            {...(country === "" ? {} : { hint: say("venue.countryIs", { country }) })}
          />
          <TextSetting settings={settings} place="region" maxLength={6} />
        </div>
      </section>
      <section>
        <h2>{say("venue.variance")}</h2>
        <p className="settings-lead">{say("venue.varianceLead")}</p>
        <div className="settings-fields">
          {THRESHOLDS.map((key) => (
            <FigureSetting key={key} settings={settings} place={`thresholds.${key}`} />
          ))}
        </div>
      </section>
      <ClockAndMoney settings={settings} />
      <section>
        <h2>{say("venue.measures")}</h2>
        <p className="settings-lead">{say("venue.measuresLead")}</p>
        <div className="settings-fields">
          {HOUSE_MEASURES.map((key) => (
            <FigureSetting key={key} settings={settings} place={`houseMl.${key}`} />
          ))}
          <ChoiceSetting
            settings={settings}
            place="oz"
            options={[
              { value: "us", label: say("people.ounceUs") },
              { value: "imperial", label: say("people.ounceImperial") },
            ]}
          />
        </div>
        <AreaTemperatures settings={settings} />
      </section>
      <Save settings={settings} />
    </form>
  );
}

function Save({ settings: { save, changed, changes, drop } }: { settings: Settings }) {
  const { error } = save;
  const isAtFields = error !== null && problemsOf(error).every(({ field }) => isPlace(placeNamed(field)));
  return (
    <div className="settings-save">
      {changes.length === 0 ? null : (
        <>
          <h2>{say("venue.toSave")}</h2>
          <ul>
            {changes.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      {changed.some(reachesBack) ? <p className="settings-care">{say("venue.anew")}</p> : null}
      {changed.includes("dayEnds") ? <p className="settings-care">{say("venue.dayEndsCare")}</p> : null}
      <div className="settings-acts">
        <Button kind="main" type="submit" isBusy={save.isPending}>
          {say("venue.save")}
        </Button>
        {changed.length === 0 ? null : (
          <Button onClick={drop} disabled={save.isPending}>
            {say("venue.dropTyped")}
          </Button>
        )}
      </div>
      {isAtFields ? null : <Problems error={error} />}
    </div>
  );
}
