using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;

namespace Rinsewright.Client.Shell;

/// <summary>Link to a screen in the bar; the first screen is also current at the bare address of the program.</summary>
public sealed class ScreenLink : NavLink
{
    /// <summary>Whether it is the first screen.</summary>
    [Parameter]
    public bool First { get; set; }

    [Inject]
    private NavigationManager Navigation { get; set; } = null!;

    /// <inheritdoc/>
    protected override bool ShouldMatch(string uriAbsolute) =>
        base.ShouldMatch(uriAbsolute) || (First && uriAbsolute == Navigation.BaseUri);
}
