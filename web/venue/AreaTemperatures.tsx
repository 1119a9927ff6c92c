import { useQuery } from "@tanstack/react-query";
import { foldName } from "#engine/name.ts";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { FigureSetting } from "./Setting.tsx";
import type { Settings } from "./use-settings.ts";

/** How cold each area is kept: those that are stated, then all others that the count knows. */
export function AreaTemperatures({ settings }: { settings: Settings }) {
  const { data: catalogue } = useQuery(catalogueQuery);
  const stated = Object.keys(settings.base.areaTemperatureC ?? {});
  const named = [...stated, ...(catalogue?.areas ?? []).map(({ area }) => area)];
  // The sheet of areas may spell a name otherwise than the settings do.
  const areas = [...new Map(named.toReversed().map((area) => [foldName(area), area])).values()].toReversed();
  return (
    <>
      <h3>{say("venue.temperatures")}</h3>
      <p className="settings-lead">{say("venue.temperaturesLead", { areas: areas.length })}</p>
      <div className="settings-fields settings-figures">
        {areas.map((area) => (
          <FigureSetting key={area} settings={settings} place={`areaTemperatureC.${area}`} />
        ))}
      </div>
    </>
  );
}
