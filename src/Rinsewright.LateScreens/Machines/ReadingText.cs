using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Machines;

/// <summary>Computed readings in words: no finer than gauges and eyes tell, one figure of a heat dose, long times in minutes.</summary>
public static class ReadingText
{
    private const double LongSeconds = 120;

    /// <summary>An observable's reading; <c>never</c> or <c>none</c> in words where there is no value.</summary>
    public static string Show(Voice voice, Observed? observed) =>
        observed switch
        {
            null => "",
            { Value: { } value } => Show(voice, observed.Observable, value.Value),
            { Absence: Absence.Never } => voice["client.model.never"],
            _ => voice["client.model.nothing"],
        };

    /// <summary>A value of an observable, in the observable's unit.</summary>
    public static string Show(Voice voice, Observable observable, double value)
    {
        var unit = UnitOf(voice, observable, value);
        return $"{Number(voice, observable, value)}\u00a0{unit.Symbol}".TrimEnd('\u00a0');
    }

    /// <summary>Its number alone, in the unit of <see cref="UnitOf"/>.</summary>
    public static string Number(Voice voice, Observable observable, double value)
    {
        var (unit, digits) = Scale(voice, observable, value);
        return unit.Dimension == Dimension.HeatUnits
            ? voice.Number(OneFigure(value), 0)
            : voice.Number(Rounded(voice, observable, value), digits);
    }

    /// <summary>As it is shown, in the unit of <see cref="UnitOf"/>.</summary>
    public static double Rounded(Voice voice, Observable observable, double value)
    {
        var (unit, digits) = Scale(voice, observable, value);
        return Math.Round(new Amount(value, observable.Unit).In(unit).Value, digits);
    }

    /// <summary>Unit a value is shown in.</summary>
    public static Unit UnitOf(Voice voice, Observable observable, double value) => Scale(voice, observable, value).Unit;

    /// <summary>Rounded to its first figure: all the model knows of a heat dose.</summary>
    public static double OneFigure(double value)
    {
        if (value <= 0)
        {
            return 0;
        }

        var ten = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return Math.Round(value / ten) * ten;
    }

    private static (Unit Unit, int Digits) Scale(Voice voice, Observable observable, double value)
    {
        if (observable.Unit == Units.Second && value >= LongSeconds)
        {
            return (Units.Minute, 1);
        }

        var unit = Shown.UnitFor(observable.Unit, voice.Units);
        var step = new Amount(observable.Threshold, observable.Unit).In(unit).Value - new Amount(0, observable.Unit).In(unit).Value;
        return (unit, Math.Clamp((int)Math.Ceiling(-Math.Log10(step)), 0, 2));
    }
}
