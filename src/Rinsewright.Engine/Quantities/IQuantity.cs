namespace Rinsewright.Engine.Quantities;

/// <summary>What every quantity type keeps: SI inside, one dimension, units at the edges only.</summary>
/// <typeparam name="TSelf">The quantity type itself.</typeparam>
public interface IQuantity<TSelf> : IComparable<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What the type measures.</summary>
    static abstract Dimension Dimension { get; }

    /// <summary>From a value with its unit.</summary>
    /// <exception cref="ArgumentException">The unit measures something else.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or below the least there can be.</exception>
    static abstract TSelf From(Amount amount);

    /// <summary>The value with this unit.</summary>
    /// <exception cref="ArgumentException">The unit measures something else.</exception>
    Amount In(Unit unit);
}
