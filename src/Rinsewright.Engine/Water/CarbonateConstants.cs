namespace Rinsewright.Engine.Water;

/// <summary>Crystal form of calcium carbonate that would fall out.</summary>
public enum CarbonateCrystal
{
    /// <summary>The stable form; scale in boosters and kettles is mostly this.</summary>
    Calcite,

    /// <summary>Slightly more soluble; common on surfaces above 60 °C.</summary>
    Aragonite,

    /// <summary>The most soluble; short-lived.</summary>
    Vaterite,
}

/// <summary>
/// Constants of the carbonate system at one temperature and ionic strength. Equations W20 to W24 of this folder's README: Plummer and Busenberg 1982 for the acids and crystals
/// [plummer-1982], Davies for activities. 0 to 90 °C; ionic strength below 0.5 mol/L.
/// </summary>
public readonly record struct CarbonateConstants
{
    private const double KelvinAtZeroCelsius = 273.15;

    /// <summary>Constants at a temperature.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="ionicStrength">Ionic strength, mol/L, 0 to 0.5.</param>
    /// <param name="crystal">Crystal whose solubility counts.</param>
    public CarbonateConstants(double celsius, double ionicStrength, CarbonateCrystal crystal = CarbonateCrystal.Calcite)
    {
        var t = celsius + KelvinAtZeroCelsius;
        var log = Math.Log10(t);
        PK1 = 356.3094 + (0.06091964 * t) - (21834.37 / t) - (126.8339 * log) + (1684915 / (t * t));
        PK2 = 107.8871 + (0.03252849 * t) - (5151.79 / t) - (38.92561 * log) + (563713.9 / (t * t));
        PKw = (4471 / t) + (0.01706 * t) - 6.0875;
        var (fixedPart, perKelvin) = crystal switch
        {
            CarbonateCrystal.Aragonite => (171.9773, 2903.293),
            CarbonateCrystal.Vaterite => (172.1295, 3074.688),
            _ => (171.9065, 2839.319),
        };
        PKs = fixedPart + (0.077993 * t) - (perKelvin / t) - (71.595 * log);
        Dielectric = (60954 / (t + 116)) - 68.937;
        DebyeHueckel = 1.82e6 * Math.Pow(Dielectric * t, -1.5);
        var root = Math.Sqrt(ionicStrength);
        PF = DebyeHueckel * ((root / (1 + root)) - (0.3 * ionicStrength));
        Bicarbonate = Math.Pow(10, PF - PK1);
        Carbonate = Math.Pow(10, (3 * PF) - PK2);
        Hydroxide = Math.Pow(10, PF - PKw);
        Hydrogen = Math.Pow(10, PF);
    }

    /// <summary>First dissociation of carbonic acid, negative decimal logarithm.</summary>
    public double PK1 { get; }

    /// <summary>Second dissociation.</summary>
    public double PK2 { get; }

    /// <summary>Solubility product of the crystal.</summary>
    public double PKs { get; }

    /// <summary>Dissociation of water.</summary>
    public double PKw { get; }

    /// <summary>Relative permittivity as the activity model takes it.</summary>
    public double Dielectric { get; }

    /// <summary>Factor A of the activity model.</summary>
    public double DebyeHueckel { get; }

    /// <summary>Negative logarithm of the activity coefficient of a single charge; of a double charge four times that.</summary>
    public double PF { get; }

    // What the shares of the carbonate and the charges of the water are made of, each for 10^pH of 1: found once, since a search asks for them a dozen times.
    internal double Bicarbonate { get; }

    internal double Carbonate { get; }

    internal double Hydroxide { get; }

    internal double Hydrogen { get; }
}
