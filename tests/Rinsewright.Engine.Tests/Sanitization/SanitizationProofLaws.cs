using CsCheck;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>What must hold for the whole way from samples to verdict, pass finding included.</summary>
public class SanitizationProofLaws
{
    private static readonly RuleSet Code = RuleSets.Find(RuleSets.DefaultId)!;

    private static Proof Prove(Trace trace, double uncertaintyC) =>
        SanitizationProof.Prove(
            new ProofTerms(
                MachineType.MultitankConveyor,
                SanitizingMethod.HotWater,
                Code,
                Instrument: new Instrument("logger", new Amount(uncertaintyC, Units.CelsiusDifference))
            ),
            [(trace, MeasuringPoint.WareSurface)],
            [],
            []
        );

    private static Surface Day(double finalC, double noise, int seed) =>
        new Surface(1, noise, seed).Counter(60).TwoTankPass(finalC).In(24, 60, 120).TwoTankPass(finalC).Counter(200);

    [Fact]
    public void Noise_within_the_uncertainty_never_turns_proven_into_not_proven() =>
        Gen.Select(Gen.Double[68, 88], Gen.Double[0.05, 1], Gen.Int[1, 10_000])
            .Sample(
                (finalC, u, seed) =>
                {
                    var clean = Prove(Day(finalC, 0, seed).Trace(), u).Verdict.Outcome;
                    var noisy = Prove(Day(finalC, u, seed).Trace(), u).Verdict.Outcome;
                    Assert.False(clean == Outcome.Proven && noisy == Outcome.NotProven, $"final {finalC}, ±{u}, seed {seed}");
                },
                iter: 300
            );

    [Fact]
    public void A_hotter_final_rinse_never_proves_less() =>
        Gen.Select(Gen.Double[68, 88], Gen.Double[0, 8], Gen.Double[0, 1.5])
            .Sample(
                (finalC, more, u) =>
                {
                    static int Rank(Outcome o) =>
                        o switch
                        {
                            Outcome.NotProven => 0,
                            Outcome.Undetermined => 1,
                            _ => 2,
                        };
                    Assert.True(
                        Rank(Prove(Day(finalC + more, 0, 1).Trace(), u).Verdict.Outcome)
                            >= Rank(Prove(Day(finalC, 0, 1).Trace(), u).Verdict.Outcome)
                    );
                },
                iter: 300
            );

    [Fact]
    public void The_unit_of_the_file_changes_nothing_but_printed_limits() =>
        Gen.Select(Gen.Double[60, 88], Gen.Double[0, 1.5])
            .Sample(
                (finalC, u) =>
                {
                    Pass c = Prove(Day(finalC, 0, 1).Trace(), u).Channels[0].Passes[0],
                        f = Prove(Day(finalC, 0, 1).Trace(Units.Fahrenheit), u).Channels[0].Passes[0];
                    Assert.Equal((c.First, c.Last), (f.First, f.Last));
                    // Samples are rounded to 0.01 in each unit: 0.01 °C moves a dose by at most half a per cent.
                    Assert.Equal(1, (f.HeatUnits.Value + 1) / (c.HeatUnits.Value + 1), 0.005);
                },
                iter: 200
            );
}
