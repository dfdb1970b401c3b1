namespace Rinsewright.Engine.Machines;

/// <summary>What went in and out since the ledger was opened, against what is there: one line for each thing that is conserved.</summary>
internal sealed class Ledger
{
    /// <summary>What was there when it was opened.</summary>
    public double Opened { get; private set; }

    /// <summary>Went in since.</summary>
    public double In { get; private set; }

    /// <summary>Went out since.</summary>
    public double Out { get; private set; }

    /// <summary>Opens it anew.</summary>
    public void Open(double stored)
    {
        Opened = stored;
        In = 0;
        Out = 0;
    }

    /// <summary>Books what came in; negative books out.</summary>
    public void Gain(double amount)
    {
        if (amount >= 0)
        {
            In += amount;
        }
        else
        {
            Out -= amount;
        }
    }

    /// <summary>Books what went out; negative books in.</summary>
    public void Lose(double amount) => Gain(-amount);

    /// <summary>What is missing, against all that went through; 0 where nothing did.</summary>
    public double Gap(double stored)
    {
        var through = Math.Max(Math.Abs(Opened) + In, Math.Abs(stored) + Out);
        return through > 0 ? Math.Abs(Opened + In - Out - stored) / through : 0;
    }
}
