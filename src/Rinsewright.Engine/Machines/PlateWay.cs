using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

/// <summary>What a piece meets on its way through a machine at steady temperatures, as phases for <see cref="PlatePass"/>.</summary>
internal static class PlateWay
{
    /// <summary>Room for every phase there can be.</summary>
    public const int Most = 24;

    // Time a piece is followed after it has come out, s.
    private const double SecondsInRoom = 30;

    /// <summary>Writes the phases and gives their number; with <paramref name="places"/>, what each is: index of the tank, or a name of <see cref="WareGroup"/>.</summary>
    public static int Phases(ModelParameters p, SteadySolution s, Span<PlatePhase> phases, Span<int> places = default)
    {
        var way = new Writer(p, s, phases, places);
        if (p.Travel.Cycle is { } cycle)
        {
            way.Spray(0, cycle.Wash);
            way.Gap(cycle.Dwell + cycle.Refill);
            if (cycle.Dumps)
            {
                way.Spray(0, cycle.Rinse);
            }
            else
            {
                way.Rinse(cycle.Rinse);
            }

            way.Gap(cycle.End);
        }
        else
        {
            var speed = Duties.Speed(p);
            double at = 0;
            for (var i = 0; i < p.Tanks.Length; i++)
            {
                way.Gap((p.Tanks[i].ZoneFrom - at) / speed);
                way.Spray(i, (p.Tanks[i].ZoneTo - p.Tanks[i].ZoneFrom) / speed);
                at = p.Tanks[i].ZoneTo;
            }

            if (p.Rinse is { } rinse)
            {
                way.Gap((rinse.ZoneFrom - at) / speed);
                way.Rinse((rinse.ZoneTo - rinse.ZoneFrom) / speed);
                at = rinse.ZoneTo;
            }

            way.Gap((p.Travel.End - at) / speed);
        }

        way.Room(SecondsInRoom);
        return way.Count;
    }

    private ref struct Writer(ModelParameters p, SteadySolution s, Span<PlatePhase> phases, Span<int> places)
    {
        private readonly Span<PlatePhase> phases = phases;
        private readonly Span<int> places = places;
        private readonly double gap = Transfers.GapTemperature(p, Hottest(s));

        public int Count { get; private set; }

        public void Spray(int tank, double seconds)
        {
            ref readonly var t = ref s.Tanks[tank];
            if (t.Transfer > 0)
            {
                Add(tank, t.Transfer, t.Celsius, seconds);
            }
            else
            {
                Gap(seconds);
            }
        }

        public void Rinse(double seconds)
        {
            if (s.RinseTransfer > 0)
            {
                Add(WareGroup.FinalRinse, s.RinseTransfer, s.RinseOnWare, seconds);
            }
            else
            {
                Gap(seconds);
            }
        }

        public void Gap(double seconds) => Add(WareGroup.Gap, p.GapTransfer, gap, seconds);

        public void Room(double seconds) => Add(WareGroup.Room, p.RoomTransfer, p.RoomTemperature, seconds);

        private void Add(int place, double transfer, double celsius, double seconds)
        {
            if (!places.IsEmpty)
            {
                places[Count] = place;
            }

            phases[Count++] = new PlatePhase(transfer, celsius, Math.Max(0, seconds));
        }

        private static double Hottest(SteadySolution s)
        {
            var hottest = double.NegativeInfinity;
            foreach (ref readonly var t in s.Tanks.AsSpan())
            {
                hottest = Math.Max(hottest, t.Celsius);
            }

            return hottest;
        }
    }
}
