using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>A sum that was worked for a machine and kept with it: what it was set to, when and by whom.</summary>
/// <param name="Tool">Id of the sum.</param>
/// <param name="On">Day.</param>
/// <param name="By">Who did it.</param>
/// <param name="Choices">What was chosen.</param>
/// <param name="Given">Figures it was worked with, by the id of their field.</param>
/// <param name="Found">Figures it gave, by the id of the result, the one that matters most first.</param>
public sealed record SetUp(
    string Tool,
    DateOnly On,
    string By,
    IReadOnlyList<KeyValuePair<string, string>> Choices,
    IReadOnlyList<KeyValuePair<string, Amount>> Given,
    IReadOnlyList<KeyValuePair<string, Amount>> Found
);
