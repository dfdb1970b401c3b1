using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Machines;

/// <summary>Something in a machine file that cannot be, with the place in the file.</summary>
/// <param name="Path">Place, for example <c>tanks.wash.capacity</c>; empty for the file as a whole.</param>
/// <param name="Says">What is wrong there and what is allowed.</param>
public sealed record MachineProblem(string Path, StatementDto Says);
