/** By when how many passages are settled, with the error of each time; animal by animal where there are several. */
import type { ReactNode } from "react";
import type { SettleFigures, SettleShare } from "../../core/study/settle-quantiles.ts";
import { settleWords } from "../../core/study/study-words.ts";
import type { StudyView } from "../state/view.ts";
import { holdWords } from "./hold-words.ts";

const SHARES: readonly SettleShare[] = ["5", "50", "95", "99"];

export function Settling({ study }: { study: StudyView }): ReactNode {
  const { animals } = study;
  const several = animals.length > 0;
  return (
    <>
      <h3>When the flap is settled</h3>
      <table className="settling" data-several={several || undefined}>
        <caption>Time after let-go by which this many of all passages are settled</caption>
        <thead>
          <tr>
            {several && <th scope="col">animal</th>}
            {SHARES.map((share) => (
              <th key={share} scope="col">
                {share} %
              </th>
            ))}
            {several && <th scope="col">hold to set</th>}
          </tr>
        </thead>
        <tbody>
          <tr>
            {several && <th scope="row">all of them</th>}
            <Times figures={study} />
            {several && <td>{holdWords(study, study)}</td>}
          </tr>
          {animals.map((animal) => (
            <tr key={animal.name}>
              <th scope="row">{animal.name}</th>
              <Times figures={animal} />
              <td>{holdWords(animal, study)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="study-note">From {study.settleFrom}. ± is one standard error.</p>
    </>
  );
}

function Times({ figures: { settle, settleError } }: { figures: SettleFigures }): ReactNode {
  return SHARES.map((share) => {
    const { time, error } = settleWords(settle[share], settleError[share]);
    return (
      <td key={share}>
        {time} <span className="settling-error">{error}</span>
      </td>
    );
  });
}
