namespace Rinsewright.Engine.Knowledge;

/// <summary>A text of the knowledge in both languages.</summary>
/// <param name="English">In English.</param>
/// <param name="Spanish">In the plain Spanish of a North American kitchen.</param>
public readonly record struct Phrase(string English, string Spanish)
{
    /// <summary>The text in a language; English where it is not <c>es</c>.</summary>
    public string In(string? language) => string.Equals(language, "es", StringComparison.OrdinalIgnoreCase) ? Spanish : English;
}
