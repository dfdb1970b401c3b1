using PublicApiGenerator;
using Rinsewright.Engine.Quantities;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Engine.Tests.PublicApi;

/// <summary>What the engine promises to its users is a text in review: a changed promise shows as a difference.</summary>
public sealed class EngineSurfaceTests
{
    [Fact]
    public void The_public_surface_of_the_engine_is_the_one_accepted() =>
        Golden.Matches(
            "tests/Rinsewright.Engine.Tests/PublicApi/Engine.txt",
            typeof(Unit).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false })
        );
}
