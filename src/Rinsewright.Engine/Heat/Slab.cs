namespace Rinsewright.Engine.Heat;

/// <summary>
/// A plate cut into equal cells across its thickness, each face in contact with a fluid. Equations H1 to H3 of this folder's README; second order in the cell. A plate that sees the
/// same on both faces is half a plate with its middle insulated.
/// </summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Thickness">Of what is cut, m: the whole plate, or half of it.</param>
/// <param name="Cells">Number of cells, 1 or more.</param>
/// <param name="Left">Coefficient at the left face, W/(m² K); 0 insulates.</param>
/// <param name="Right">Coefficient at the right face, W/(m² K); 0 insulates.</param>
internal readonly record struct Slab(Material Material, double Thickness, int Cells, double Left, double Right)
{
    /// <summary>Half of a plate that sees the same on both faces, in contact at its left.</summary>
    /// <param name="material">What it is made of.</param>
    /// <param name="thickness">Of the whole plate, m.</param>
    /// <param name="cells">Cells over the whole plate, even.</param>
    /// <param name="coefficient">At both faces, W/(m² K).</param>
    public static Slab Symmetric(Material material, double thickness, int cells, double coefficient) =>
        new(material, thickness / 2, cells / 2, coefficient, 0);

    /// <summary>Thickness of a cell, m.</summary>
    public double CellWidth => Thickness / Cells;

    /// <summary>Heat held by a cell per area, J/(m² K).</summary>
    public double CellCapacity => Material.HeatPerVolume * CellWidth;

    /// <summary>Conductance between neighbours, W/(m² K).</summary>
    public double Between => Material.Conductivity / CellWidth;

    /// <summary>Conductance from the left fluid to the middle of the first cell, W/(m² K). Equation H2.</summary>
    public double LeftFace => Face(Left);

    /// <summary>Conductance from the right fluid to the middle of the last cell, W/(m² K). Equation H2.</summary>
    public double RightFace => Face(Right);

    /// <summary>Weight of the first cell in the temperature of the left face; the fluid has the rest. Equation H3.</summary>
    public double LeftWeight => Weight(Left);

    /// <summary>Weight of the last cell in the temperature of the right face; the fluid has the rest. Equation H3.</summary>
    public double RightWeight => Weight(Right);

    private double Face(double coefficient) => coefficient > 0 ? 1 / ((1 / coefficient) + (CellWidth / (2 * Material.Conductivity))) : 0;

    private double Weight(double coefficient)
    {
        var inside = 2 * Material.Conductivity / CellWidth;
        return inside / (inside + coefficient);
    }

    /// <summary>Writes A of dT/dt = A T + b, row by row, per second; symmetric.</summary>
    /// <param name="matrix">Cells² numbers.</param>
    public void WriteMatrix(Span<double> matrix)
    {
        var n = Cells;
        double capacity = CellCapacity,
            between = Between / capacity;
        matrix[..(n * n)].Clear();
        for (var i = 0; i + 1 < n; i++)
        {
            matrix[(i * n) + i] -= between;
            matrix[(i * n) + i + 1] = between;
            matrix[((i + 1) * n) + i] = between;
            matrix[((i + 1) * n) + i + 1] -= between;
        }

        matrix[0] -= LeftFace / capacity;
        matrix[(n * n) - 1] -= RightFace / capacity;
    }
}
