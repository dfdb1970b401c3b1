using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Visits;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits;
using Xunit;

namespace Rinsewright.Client.Tests.Visits;

/// <summary>The drawing of a machine and the list of parts to look at speak of the same parts; the kitchen's lines of its language.</summary>
public sealed class VisitSectionTests
{
    /// <summary>A tap on any part with a name leads to a line of the list, on every kind of machine.</summary>
    [Fact]
    public void Every_part_of_the_drawing_is_in_the_list()
    {
        var trade = VisitWork.BuiltIn();
        foreach (var kind in Enum.GetValues<MachineKind>())
        {
            var machine = TypicalMachines.Of(kind);
            var listed = PartOrder.Of(machine, trade).Select(p => p.Id).ToHashSet(StringComparer.Ordinal);

            // The supply line is drawn with its regulator also where no rinse asks for a pressure: there is nothing to look at then.
            var drawn = SectionPlanner
                .Of(machine)
                .Parts.Where(p => p.Side != FlagSide.None && (machine.FinalRinse is not null || p.Name != "pressure-regulator"))
                .ToList();
            Assert.NotEmpty(drawn);
            Assert.All(drawn, p => Assert.True(listed.Contains(p.KnownAs), $"{kind}: {p.Id} is {p.KnownAs}"));
        }
    }

    /// <summary>The first language named that the program speaks, however it is written.</summary>
    [Theory]
    [InlineData("English, Spanish", "en")]
    [InlineData("Español, English", "es")]
    [InlineData("Portuguese; castellano", "es")]
    [InlineData("INGLÉS", "en")]
    [InlineData("Vietnamese", null)]
    [InlineData("", null)]
    public void A_kitchen_is_spoken_to_in_its_language(string languages, string? expected) =>
        Assert.Equal(expected, KitchenWords.Language(languages));
}
