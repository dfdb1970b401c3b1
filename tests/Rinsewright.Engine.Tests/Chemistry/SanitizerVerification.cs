using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Chemistry;

/// <summary>Rows CHV060 to CHV067 and CHV095 to CHV097 of the check list: chlorine and acid.</summary>
public sealed class SanitizerVerification
{
    private static readonly MassConcentration Heavy = MassConcentration.FromGramPerLitre(1200);

    [Theory] // CHV060: Morris 1966, figures of the paper from memory
    [InlineData(0, 7.825)]
    [InlineData(20, 7.582)]
    [InlineData(25, 7.537)]
    [InlineData(49, 7.394)]
    public void PKa(double celsius, double pka) => Assert.Equal(pka, Chlorine.PKa(Temperature.FromCelsius(celsius)), 0.001);

    [Theory] // CHV061, opened: a textbook prints 77.6 % with pKa 7.54; CHV062
    [InlineData(7.0, 25, 0.776, 0.002)]
    [InlineData(8.0, 24, 0.260, 0.001)]
    [InlineData(10, 38, 0.0028, 0.0001)]
    public void Hypochlorous(double pH, double celsius, double share, double within) =>
        Assert.Equal(share, Chlorine.HypochlorousShare(Acidity.FromPH(pH), Temperature.FromCelsius(celsius)).InFraction, within);

    [Fact] // CHV063 and CHV064, opened
    public void Strengths()
    {
        var trade = Bleach.FromTrade(Ratio.FromPercent(15), Heavy);
        Assert.Equal(12.5, trade.ByWeight.InPercent, 0.01);
        Assert.Equal(13.12, trade.HypochloriteByWeight.InPercent, 0.01);
        Assert.Equal(
            5.71,
            Bleach.FromHypochlorite(Ratio.FromPercent(6), MassConcentration.FromGramPerLitre(1080)).ByWeight.InPercent,
            0.01
        );
    }

    [Fact] // CHV065 to CHV067
    public void Dose_for_a_cycle()
    {
        var stock = Bleach.FromHypochlorite(Ratio.FromPercent(8.25), MassConcentration.FromGramPerLitre(1100));
        Assert.Equal(86.4, stock.Available.InGramPerLitre, 0.1);
        var dose = Feeding.Dose(MassConcentration.FromMilligramPerLitre(50), Volume.FromLitre(4.5), stock.Available);
        Assert.Equal(2.60, dose.InMillilitre, 0.01);
        Assert.Equal(12.0, Feeding.Setting(dose, Duration.FromSecond(13)).InLitrePerMinute * 1000, 0.1);
        Assert.Equal(50, Feeding.Strength(dose, stock.Available, Volume.FromLitre(4.5)).InMilligramPerLitre, 1e-9);
    }

    [Theory] // Its text: chlorine gas at 0.01 mol/L chloride
    [InlineData(2, 0.18, 0.005)]
    [InlineData(3, 0.022, 0.0005)]
    [InlineData(4, 0.002, 0.0005)]
    public void Gas(double pH, double share, double within) =>
        Assert.Equal(share, Chlorine.GasShare(Acidity.FromPH(pH), 0.01).InFraction, within);

    [Theory] // CHV095; stoichiometry
    [InlineData(LimeAcid.Phosphoric, 1.958)]
    [InlineData(LimeAcid.Citric, 1.9195)]
    [InlineData(LimeAcid.Sulfamic, 1.940)]
    [InlineData(LimeAcid.Glycolic, 1.5197)]
    [InlineData(LimeAcid.Lactic, 1.80)]
    [InlineData(LimeAcid.Methanesulfonic, 1.9205)]
    public void Acid_for_a_gram_of_lime(LimeAcid acid, double grams) => Assert.Equal(grams, Delime.PerGram(acid), 0.001);

    [Fact] // Worked example of the text: 500 g of lime, 75 % phosphoric at 1.58; CHV097
    public void Delime_dose()
    {
        var dose = Delime.Dose(
            Mass.FromGram(500),
            LimeAcid.Phosphoric,
            Ratio.FromPercent(75),
            MassConcentration.FromGramPerLitre(1580),
            default
        );

        Assert.Equal(979, dose.Acid.InGram, 0.5);
        Assert.Equal(827, dose.Product.InMillilitre, 1.0);
        Assert.Equal(122, dose.Gas.InLitre, 0.5);
    }

    [Theory] // CHV096, opened (sulfamic, % for each mL of normal caustic in 10 mL); phosphoric 0.490 computed
    [InlineData(LimeAcid.Sulfamic, 0.97)]
    [InlineData(LimeAcid.Phosphoric, 0.490)]
    public void Acid_by_titration(LimeAcid acid, double percentForEach) =>
        Assert.Equal(
            percentForEach,
            Delime.Strength(Volume.FromMillilitre(1), 1, Volume.FromMillilitre(10), acid).InGramPerLitre / 10,
            0.005
        );

    [Theory]
    [InlineData(true, true, true, true)]
    [InlineData(true, true, null, false)]
    [InlineData(true, null, true, false)]
    [InlineData(null, true, true, false)]
    [InlineData(false, true, true, false)]
    public void Acid_waits_until_chlorine_is_known_to_be_gone(bool? off, bool? drained, bool? none, bool open) =>
        Assert.Equal(open, new DelimeGate(off, drained, none).Open);
}
