using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>The proof of typed-in readings alone. One with a logger file needs what reads files.</summary>
public static class TypedProof
{
    /// <summary>Judges the readings of a request.</summary>
    /// <exception cref="ContractException">A field of the request is not known.</exception>
    /// <exception cref="RuleSetException">The service's own rule set cannot be used.</exception>
    public static ProofReport Judge(ProofRequest request)
    {
        var terms = request.Terms();
        var proof = SanitizationProof.Prove(terms, [], request.TypedReadings(), []);
        var (uncertainty, stated) = SanitizationProof.UncertaintyUsed(terms, []);
        return new ProofReportMapping(Words.For(request.Language)).Report(proof, ProofReportMapping.Terms(terms, uncertainty, stated));
    }
}
