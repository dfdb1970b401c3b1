namespace Rinsewright.Engine.Quantities;

/// <summary>Why a typed amount was refused: a word key and the piece of text it is about. The words stand in the language files.</summary>
/// <param name="Key">
/// <c>amount.empty</c>, <c>amount.no-number</c>, <c>amount.bad-groups</c>, <c>amount.ambiguous-mark</c>, <c>amount.no-unit</c>,
/// <c>amount.no-scale</c>, <c>amount.unknown-unit</c>, <c>amount.other-dimension</c>, <c>amount.too-large</c> or <c>amount.below-zero</c>.
/// </param>
/// <param name="Text">The piece of text that is refused, as it was typed.</param>
/// <param name="Position">Where it starts in the text as typed, counted from 0.</param>
public sealed record ParseProblem(string Key, string Text, int Position);
