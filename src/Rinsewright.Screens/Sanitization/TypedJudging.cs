using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>Typed readings alone take no time: they are judged in the page, without what reads files.</summary>
public static class TypedJudging
{
    /// <summary>Judges, and turns what can be wrong with what was asked into words.</summary>
    public static ComputeAnswer Answer(ProofRequest request)
    {
        try
        {
            return new ComputeAnswer(TypedProof.Judge(request));
        }
        catch (Exception e) when (Problem(e, request) is { } problem)
        {
            return new ComputeAnswer(Problem: problem);
        }
    }

    /// <summary>What is wrong with a request in its language; null where the exception says nothing about it.</summary>
    internal static string? Problem(Exception e, ProofRequest request) =>
        e switch
        {
            ContractException { Says: { } says } => Words.For(request.Language).Say(Wire.From(says)),
            ContractException or RuleSetException => e.Message,
            _ => null,
        };
}
