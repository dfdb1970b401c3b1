namespace Rinsewright.Engine.Machines;

// Chemicals, films and the books.
internal sealed partial class Simulation
{
    // Additive does not evaporate with the rinse water.
    private double RinseAdditive => RinseFlow > rinseEvaporation ? p.Feed.Additive * RinseFlow / (RinseFlow - rinseEvaporation) : 0;

    private void AddSources(double dt)
    {
        var last = tank[tanks - 1];
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            for (var k = 0; k < Solute.Count && group.FilmKept < 1; k++)
            {
                last.Source[k] += (1 - group.FilmKept) * GroupFilm * group.FilmShare[k];
            }
        }

        last.Source[Solute.Additive] += dt * captured * RinseAdditive;
        if (Dosing)
        {
            tank[p.Wash].Source[Solute.Detergent] += dt * p.Feed.Rate;
            Content[Solute.Detergent].Gain(dt * p.Feed.Rate);
        }

        Content[Solute.Additive].Gain(dt * RinseFlow * p.Feed.Additive);
        if (p.Rinse is null)
        {
            Feed(Solute.Additive, p.Feed.Additive, dt);
            Feed(Solute.Sanitizer, p.Feed.Sanitizer, dt);
        }
    }

    // Where the tank gives the rinse, its fill carries what the rinse needs.
    private void Feed(int solute, double strength, double dt)
    {
        var fed = dt * tank[p.Wash].Fill * strength;
        tank[p.Wash].Source[solute] += fed;
        Content[solute].Gain(fed);
    }

    // Soil uses up sanitizer: first order in both (estimate, from memory).
    private void UseUpSanitizer(double dt)
    {
        for (var i = 0; i < tanks && p.Feed.Sanitizer > 0; i++)
        {
            var at = i * Solute.Count;
            var kept = Math.Exp(-p.Feed.Demand * share[at + Solute.Soil] * dt);
            Content[Solute.Sanitizer].Lose((1 - kept) * solutes[at + Solute.Sanitizer]);
            solutes[at + Solute.Sanitizer] *= kept;
        }
    }

    private void LeaveBaths()
    {
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            if (group.Leaves >= 0)
            {
                group.Bath = -1;
                group.Film = tank[group.Leaves].Celsius;
                share.AsSpan(group.Leaves * Solute.Count, Solute.Count).CopyTo(group.FilmShare);
            }
            else if (group.FilmKept < 1)
            {
                var kept = group.FilmKept;
                group.Film = (kept * group.Film) + ((1 - kept) * RinseSpent);
                for (var k = 0; k < Solute.Count; k++)
                {
                    group.FilmShare[k] = (kept * group.FilmShare[k]) + (k == Solute.Additive ? (1 - kept) * RinseAdditive : 0);
                }
            }
        }
    }

    private void Book(double dt)
    {
        double drained = bypassed,
            drainedHeat = bypassed * RinseSpent,
            floor = 0,
            vapour = rinseEvaporation,
            heat = 0;
        for (var i = 0; i < tanks; i++)
        {
            var s = tank[i];
            var toDrain = s.Leak + s.Drained + (p.Tanks[i].SpillsTo < 0 ? s.Overflow : 0);
            drained += toDrain;
            floor += s.Floor;
            vapour += s.Evaporation;
            drainedHeat += (toDrain + s.Floor) * s.Celsius;
            heat += s.Power + PumpHeat(i) + (s.Fill * HeatCapacity * p.SupplyTemperature);
            heat -= s.Vent + (p.Tanks[i].Shell * (s.Celsius - room.Celsius));
            Water.Gain(dt * s.Fill);
            for (var k = 0; k < Solute.Count; k++)
            {
                Content[k].Lose(dt * (toDrain + s.Floor) * share[(i * Solute.Count) + k]);
            }
        }

        Content[Solute.Additive].Lose(dt * bypassed * RinseAdditive);
        Water.Gain(dt * RinseFlow);
        Water.Lose(dt * (drained + floor + vapour));
        heat += (RinseFlow * HeatCapacity * p.SupplyTemperature) + BoosterPower - rinseVent;
        heat -= p.Booster is { } booster ? booster.Shell * (Booster - room.Celsius) : 0;
        Heat.Gain(dt * heat);
        Heat.Lose(dt * drainedHeat * HeatCapacity);
        Heat.Gain(roomToWare);
    }
}
