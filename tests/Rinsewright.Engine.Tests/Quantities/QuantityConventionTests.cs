using System.Reflection;
using System.Runtime.CompilerServices;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Quantities;

/// <summary>Every quantity type keeps the conventions of the folder's README.</summary>
public sealed class QuantityConventionTests
{
    private static readonly Type[] Types =
    [
        .. typeof(Temperature).Assembly.GetTypes().Where(t => t.IsValueType && t.GetInterfaces().Any(i => i.Name == "IQuantity`1")),
    ];

    public static TheoryData<Type> Quantities() => new(Types);

    [Fact]
    public void Every_dimension_has_one_quantity_type_of_its_name_and_at_least_one_unit()
    {
        Assert.Equal(Enum.GetNames<Dimension>().Order(StringComparer.Ordinal), Types.Select(t => t.Name).Order(StringComparer.Ordinal));
        Assert.All(Enum.GetValues<Dimension>(), d => Assert.NotEmpty(Units.Of(d)));
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Quantity_is_an_immutable_value_with_SI_inside_and_no_public_constructor(Type type)
    {
        Assert.NotNull(type.GetCustomAttribute<IsReadOnlyAttribute>());
        Assert.Empty(type.GetConstructors());
        var field = Assert.Single(type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public));
        Assert.Equal((typeof(double), true), (field.FieldType, field.IsPrivate));
        Assert.All(type.GetProperties(), p => Assert.False(p.CanWrite));
        Assert.Equal(type.Name, type.GetProperty("Dimension")!.GetValue(null)!.ToString());
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Every_In_has_its_From_and_both_agree(Type type)
    {
        var ins = type.GetProperties().Where(p => p.Name.StartsWith("In", StringComparison.Ordinal)).ToList();
        var froms = Factories(type);
        Assert.NotEmpty(ins);
        Assert.Equal(
            ins.Select(p => p.Name[2..]).Order(StringComparer.Ordinal),
            froms.Select(m => m.Name[4..]).Order(StringComparer.Ordinal)
        );
        foreach (var from in froms)
        {
            var back = (double)type.GetProperty("In" + from.Name[4..])!.GetValue(from.Invoke(null, [12.5]))!;
            Assert.Equal(12.5, back, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Nothing_but_finite_numbers_is_taken(Type type)
    {
        foreach (var from in Factories(type))
        {
            foreach (var bad in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity])
            {
                var thrown = Assert.Throws<TargetInvocationException>(() => from.Invoke(null, [bad]));
                Assert.IsType<ArgumentOutOfRangeException>(thrown.InnerException);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Quantity_compares_and_takes_its_own_units_only(Type type)
    {
        foreach (var name in (string[])["op_LessThan", "op_GreaterThan", "op_LessThanOrEqual", "op_GreaterThanOrEqual"])
        {
            Assert.NotNull(type.GetMethod(name, [type, type]));
        }

        var from = Factories(type)[0];
        object small = from.Invoke(null, [1.0])!,
            large = from.Invoke(null, [2.0])!;
        Assert.True((bool)type.GetMethod("op_LessThan")!.Invoke(null, [small, large])!);
        Assert.False((bool)type.GetMethod("op_GreaterThanOrEqual")!.Invoke(null, [small, large])!);
        Assert.True((bool)type.GetMethod("op_LessThanOrEqual")!.Invoke(null, [small, small])!);
        Assert.Equal(-1, ((IComparable)Comparable(small, large)).CompareTo(0));

        var dimension = (Dimension)type.GetProperty("Dimension")!.GetValue(null)!;
        var take = type.GetMethod("From", [typeof(Amount)])!;
        foreach (var unit in Units.All)
        {
            if (unit.Dimension == dimension)
            {
                Assert.Equal(
                    3,
                    ((Amount)type.GetMethod("In", [typeof(Unit)])!.Invoke(take.Invoke(null, [new Amount(3, unit)]), [unit])!).Value,
                    1e-9
                );
            }
            else
            {
                Assert.IsType<ArgumentException>(
                    Assert.Throws<TargetInvocationException>(() => take.Invoke(null, [new Amount(3, unit)])).InnerException
                );
            }
        }
    }

    [Fact]
    public void Points_and_scales_have_no_sum()
    {
        Assert.Null(typeof(Temperature).GetMethod("op_Addition", [typeof(Temperature), typeof(Temperature)]));
        Assert.Null(typeof(Temperature).GetMethod("op_Multiply"));
        Assert.Null(typeof(Acidity).GetMethod("op_Addition"));
        Assert.Null(typeof(GaugePressure).GetMethod("op_Addition"));
        Assert.Null(typeof(AbsolutePressure).GetMethod("op_Subtraction"));
    }

    private static IComparable Comparable(object left, object right) =>
        (int)left.GetType().GetMethod("CompareTo", [left.GetType()])!.Invoke(left, [right])!;

    private static MethodInfo[] Factories(Type type) =>
        [
            .. type.GetMethods(BindingFlags.Static | BindingFlags.Public)
                .Where(m => m.Name.StartsWith("From", StringComparison.Ordinal) && m.Name.Length > 4),
        ];
}
