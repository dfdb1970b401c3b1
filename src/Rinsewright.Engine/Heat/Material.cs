namespace Rinsewright.Engine.Heat;

/// <summary>What ware is made of.</summary>
/// <param name="Id">Id as the ware of a machine names it.</param>
/// <param name="Conductivity">W/(m K).</param>
/// <param name="Density">kg/m³.</param>
/// <param name="HeatCapacity">J/(kg K).</param>
/// <param name="Thinnest">Usual thickness, from, m.</param>
/// <param name="Thickest">Usual thickness, to, m.</param>
internal sealed record Material(string Id, double Conductivity, double Density, double HeatCapacity, double Thinnest, double Thickest)
{
    /// <summary>Vitrified ceramic [porcelain-properties]; the heat capacity is an estimate between what is printed of porcelain (1050, with a slip in its unit) and of pottery (920).</summary>
    public static Material Ceramic { get; } = new("ceramic", 1.5, 2400, 1000, 0.005, 0.008);

    /// <summary>Glass [porcelain-properties].</summary>
    public static Material Glass { get; } = new("glass", 1.0, 2500, 820, 0.002, 0.003);

    /// <summary>Stainless steel; from memory.</summary>
    public static Material Steel { get; } = new("steel", 15, 7900, 477, 0.0008, 0.0012);

    /// <summary>Melamine; from memory, an estimate.</summary>
    public static Material Melamine { get; } = new("melamine", 0.42, 1500, 1670, 0.003, 0.004);

    /// <summary>Polycarbonate; from memory.</summary>
    public static Material Polycarbonate { get; } = new("polycarbonate", 0.20, 1200, 1250, 0.0025, 0.0035);

    /// <summary>Polypropylene of the rack; from memory. Thickness is that of a strand.</summary>
    public static Material Polypropylene { get; } = new("polypropylene", 0.20, 905, 1900, 0.003, 0.003);

    /// <summary>Every material.</summary>
    public static IReadOnlyList<Material> All { get; } = [Ceramic, Glass, Steel, Melamine, Polycarbonate, Polypropylene];

    /// <summary>Heat held per volume, J/(m³ K).</summary>
    public double HeatPerVolume => Density * HeatCapacity;

    /// <summary>Diffusivity, m²/s.</summary>
    public double Diffusivity => Conductivity / HeatPerVolume;

    /// <summary>Material by its id; null where there is none.</summary>
    public static Material? Find(string id)
    {
        foreach (var material in All)
        {
            if (material.Id == id)
            {
                return material;
            }
        }

        return null;
    }

    /// <summary>
    /// Time constant, s, with which the mean temperature of a piece follows its surroundings. Equation H4: half thickness L, m; coefficient h, W/(m² K). Within 0.04 of the exact
    /// mean up to a Biot number of 4, 0.065 up to 8. Infinite where nothing is exchanged.
    /// </summary>
    public double MeanTimeConstant(double halfThickness, double coefficient) =>
        coefficient > 0
            ? HeatPerVolume * halfThickness * ((1 / coefficient) + (halfThickness / (3 * Conductivity)))
            : double.PositiveInfinity;
}
