using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;
using Xunit;

namespace Rinsewright.Contracts.Tests.Visits;

/// <summary>What makes a machine safe again says who may do it, once. Cures as the knowledge has them.</summary>
public sealed class VisitWordsTests
{
    private static readonly Person Electrician = new("electrician", new Phrase("licensed electrician", "electricista"), true, []);

    [Theory]
    [InlineData("en", "Lock out, licensed electrician", "Candado, electricista con licencia", "Lock out, licensed electrician.")]
    [InlineData("es", "Lock out, licensed electrician", "Candado, electricista con licencia", "Candado, electricista con licencia.")]
    [InlineData("en", "replace the fuse", "cambie el fusible", "Replace the fuse (licensed electrician).")]
    [InlineData("es", "replace the fuse", "cambie el fusible", "Cambie el fusible (electricista).")]
    public void Who_may_do_it_is_said_once(string language, string cure, string spanish, string said)
    {
        var stop = new StopReason(
            default,
            "invented",
            new Phrase("Invented", "Inventado"),
            Statement.Of("visit.warn.tag"),
            true,
            [],
            Electrician,
            new Phrase(cure, spanish),
            []
        );

        Assert.Equal(said, Words.For(language).SafeAgain(stop));
    }
}
