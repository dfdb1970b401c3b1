namespace Rinsewright.Engine.Machines;

/// <summary>
/// A linear system of a few unknowns, solved by elimination without exchange of rows: enough where each diagonal outweighs its column, as in every balance of flows.
/// </summary>
internal static class SmallSystem
{
    /// <summary>Replaces the matrix, row by row, by its factors.</summary>
    public static void Factor(Span<double> matrix, int n)
    {
        for (var k = 0; k < n; k++)
        {
            for (var i = k + 1; i < n; i++)
            {
                var factor = matrix[(i * n) + k] / matrix[(k * n) + k];
                matrix[(i * n) + k] = factor;
                for (var j = k + 1; j < n; j++)
                {
                    matrix[(i * n) + j] -= factor * matrix[(k * n) + j];
                }
            }
        }
    }

    /// <summary>Replaces the right side by the solution.</summary>
    public static void Solve(ReadOnlySpan<double> factors, Span<double> right, int n)
    {
        for (var i = 1; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                right[i] -= factors[(i * n) + j] * right[j];
            }
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
            {
                right[i] -= factors[(i * n) + j] * right[j];
            }

            right[i] /= factors[(i * n) + i];
        }
    }
}
