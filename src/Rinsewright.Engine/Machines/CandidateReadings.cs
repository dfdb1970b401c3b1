namespace Rinsewright.Engine.Machines;

/// <summary>Readings that somebody could take, under usual conditions, for telling which would help.</summary>
internal static class CandidateReadings
{
    // A rise or fall a service thermometer shows well, K; part of the most racks that fit, as a rate that kitchens keep up.
    private const double Change = 15;
    private const double LoadShare = 0.6;

    public static List<(UsableReading Reading, string? Part)> Of(ModelParameters p)
    {
        List<(UsableReading, string?)> candidates = [];
        var racks = LoadShare * Duties.MostRacks(p);
        foreach (var kind in ReadingKinds.All)
        {
            if (
                kind == ReadingKinds.LevelDrop
                || kind == ReadingKinds.IdleFillDuty
                || kind.Id.StartsWith("lineCurrent", StringComparison.Ordinal)
            )
            {
                continue;
            }

            foreach (var (part, id) in Parts(p, kind))
            {
                var hot = part >= 0 ? p.Tanks[part].Heater?.SetPoint ?? 65 : 65;
                var cools = kind == ReadingKinds.CoolingTime;
                candidates.Add(
                    (
                        new UsableReading([], kind, part, 1, kind.Sigma)
                        {
                            From = cools ? hot : hot - Change,
                            To = cools ? hot - Change : hot,
                            Racks = racks,
                        },
                        id
                    )
                );
            }
        }

        return candidates;
    }

    private static IEnumerable<(int Part, string? Id)> Parts(ModelParameters p, ReadingKind kind)
    {
        if (kind.Part == ReadingPart.None)
        {
            var rinses =
                kind == ReadingKinds.RinsePressure || kind == ReadingKinds.RinseVolumePerRack || kind == ReadingKinds.FinalRinseTemperature;
            if ((p.Rinse is not null || !rinses) && (p.Conveys || kind != ReadingKinds.ConveyorSpeed))
            {
                yield return (UsableReading.OfNone, null);
            }

            yield break;
        }

        for (var i = 0; i < p.Tanks.Length; i++)
        {
            var tank = p.Tanks[i];
            if (
                kind.Part switch
                {
                    ReadingPart.Heater or ReadingPart.HeatedTank => tank.Heater is not null,
                    ReadingPart.FilledTank => tank.FillFlow > 0,
                    _ => true,
                }
            )
            {
                yield return (i, tank.Id);
            }
        }

        if (kind.Part == ReadingPart.Heater && p.Booster is not null)
        {
            yield return (UsableReading.OfBooster, "booster");
        }
    }
}
