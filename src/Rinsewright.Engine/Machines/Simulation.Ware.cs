using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

// Booster and ware: equations M3 to M6. Ware meets the water as it was before the step.
internal sealed partial class Simulation
{
    private const double SecondsInRoom = 30;
    private readonly Contacts contacts;
    private double rinseVent;
    private double rinseEvaporation;
    private double rinseToWare;
    private double rinseReplaced;
    private double roomToWare;
    private double rinseKeeps = 1;

    /// <summary>What is told of a group that has left.</summary>
    public Action<WareGroup>? Left { get; set; }

    /// <summary>Heat of the booster, W.</summary>
    public double BoosterPower { get; private set; }

    private void HeatBooster(double dt)
    {
        BoosterPower = 0;
        if (p.Booster is not { } booster)
        {
            Booster = p.SupplyTemperature;
            return;
        }

        BoosterPower = BoosterOn ? booster.Heater.HeatAt(Booster) : 0;
        var through = RinseFlow * HeatCapacity;
        Booster =
            ((booster.Capacity * Booster) + (dt * ((through * p.SupplyTemperature) + BoosterPower + (booster.Shell * room.Celsius))))
            / (booster.Capacity + (dt * (through + booster.Shell)));
    }

    private void StepWare(double dt)
    {
        var ware = p.Ware;
        SetContacts(dt);
        rinseToWare = 0;
        rinseReplaced = 0;
        roomToWare = 0;
        for (var i = 0; i < tanks; i++)
        {
            tank[i].ToWare = 0;
            tank[i].FilmIn = 0;
            tank[i].FilmHeat = 0;
            tank[i].FilmOut = 0;
            Array.Clear(tank[i].Source);
        }

        double pieces = ware.PieceHeat / ware.Groups,
            racks = ware.RackHeat / ware.Groups;
        for (var g = 0; g < groups; g++)
        {
            var group = Group(g);
            group.Place = PlaceOf(group);
            ChangeBath(group);
            ref readonly var contact = ref contacts.At(group.Place);
            var start = contact.Propagator!.LeftSurface(group.Slab, contact.Celsius);
            contact.Propagator.Step(group.Slab, contact.Celsius, 0);
            var after = contact.Propagator.LeftSurface(group.Slab, contact.Celsius);
            var mean = SlabPropagator.Mean(group.Slab);
            var rack = contact.Celsius + ((group.Rack - contact.Celsius) * contact.RackDecay);
            var taken = (pieces * (mean - group.Mean)) + (racks * (rack - group.Rack));
            group.Mean = mean;
            group.Rack = rack;
            group.Peak = Math.Max(group.Peak, after);
            group.HeatUnits += HeatUnitRate.Over((1.8 * start) + 32, (1.8 * after) + 32, dt);
            group.A0 += A0Rate.Over((1.8 * start) + 32, (1.8 * after) + 32, dt);
            group.FilmKept = 1;
            if (group.Place >= 0)
            {
                tank[group.Place].ToWare += taken;
                Clean(group, contact.SoilOff);
            }
            else if (group.Place == WareGroup.FinalRinse)
            {
                rinseToWare += taken;
                group.FilmKept = group.Bath < 0 ? rinseKeeps : 1;
                rinseReplaced += (1 - group.FilmKept) * GroupFilm;
            }
            else
            {
                roomToWare += taken;
            }
        }
    }

    private int PlaceOf(WareGroup group)
    {
        if (!p.Conveys)
        {
            return group.Outside >= 0 ? WareGroup.Room
                : tank[0].Spray.Spray > 0 ? 0
                : Rinsing ? WareGroup.FinalRinse
                : WareGroup.Gap;
        }

        var x = group.Position;
        for (var i = 0; i < tanks; i++)
        {
            if (x >= p.Tanks[i].ZoneFrom && x < p.Tanks[i].ZoneTo)
            {
                return tank[i].Spray.Spray > 0 ? i : WareGroup.Gap;
            }
        }

        return x < 0 || x >= p.Travel.End ? WareGroup.Room
            : Rinsing && x >= p.Rinse!.ZoneFrom && x < p.Rinse.ZoneTo ? WareGroup.FinalRinse
            : WareGroup.Gap;
    }

    // A group gives its film to the water that sprays it and takes another when it leaves. From one bath into the next it goes with a step in between.
    private void ChangeBath(WareGroup group)
    {
        group.Leaves = -1;
        if (group.Bath >= 0 && group.Bath != group.Place)
        {
            group.Leaves = group.Bath;
            tank[group.Bath].FilmOut += GroupFilm;
        }
        else if (group.Bath < 0 && group.Place >= 0)
        {
            group.Bath = group.Place;
            var t = tank[group.Place];
            t.FilmIn += GroupFilm;
            t.FilmHeat += GroupFilm * HeatCapacity * group.Film;
            for (var k = 0; k < Solute.Count; k++)
            {
                t.Source[k] += GroupFilm * group.FilmShare[k];
            }
        }
    }

    // Soil that the spray takes off: a teaching number, not physics. Equation M6.
    private void Clean(WareGroup group, double share)
    {
        var off = group.Soil * share;
        group.Soil -= off;
        tank[group.Place].Source[Solute.Soil] += off;
    }

    private void SetContacts(double dt)
    {
        if (groups > 0)
        {
            SetSpraysAndAir(dt);
        }

        rinseVent = 0;
        rinseEvaporation = 0;
        if (!Rinsing || RinseFlow <= 0)
        {
            return;
        }

        var rinse = p.Rinse!;
        var vent = VentExchange.Of(rinse.Air * p.AirFactor, p.AirApproach, Booster, room);
        rinseVent = vent.Heat;
        rinseEvaporation = vent.Evaporation;
        if (groups > 0)
        {
            Set(WareGroup.FinalRinse, Transfers.FinalRinse(p, RinseFlow), Booster - (rinseVent / (RinseFlow * HeatCapacity)), dt);
            rinseKeeps = Math.Exp(-Transfers.FilmExchange(p, RinseFlow) * dt);
        }
    }

    private void SetSpraysAndAir(double dt)
    {
        var hottest = double.NegativeInfinity;
        for (var i = 0; i < tanks; i++)
        {
            var t = p.Tanks[i];
            hottest = Math.Max(hottest, tank[i].Celsius);
            if (tank[i].Spray.Spray > 0)
            {
                Set(i, Transfers.Spray(p, i, tank[i].Spray), tank[i].Celsius, dt);
                var rate = SoilRemoval.Rate(p, i, tank[i].Spray.Spray, tank[i].Celsius, Share(i, Solute.Detergent));
                contacts.At(i).SoilOff = 1 - Math.Exp(-rate * dt);
            }
        }

        Set(WareGroup.Gap, p.GapTransfer, Transfers.GapTemperature(p, hottest), dt);
        Set(WareGroup.Room, p.RoomTransfer, room.Celsius, dt);
    }

    private void Set(int place, double transfer, double celsius, double dt)
    {
        var ware = p.Ware;
        ref var contact = ref contacts.At(place);
        contact.Celsius = celsius;
        contact.Propagator = propagators.For(Slab.Symmetric(ware.Material, ware.Thickness, 2 * WareGroup.Cells, transfer), dt);
        contact.RackDecay = Math.Exp(-dt / Material.Polypropylene.MeanTimeConstant(ware.RackHalfThickness, transfer));
    }

    private void Drop()
    {
        var oldest = groups > 0 ? Group(0) : null;
        while (
            oldest is not null
            && (p.Conveys ? oldest.Position > p.Travel.End + (p.Travel.Speed * SecondsInRoom) : oldest.Outside >= SecondsInRoom - 1e-9)
        )
        {
            Left?.Invoke(oldest);
            Water.Lose(oldest.Bath < 0 ? GroupFilm : 0);
            Heat.Lose(HeatOf(oldest));
            for (var k = 0; k < Solute.Count; k++)
            {
                Content[k].Lose(SoluteOf(oldest, k));
            }

            first = (first + 1) % ring.Length;
            groups--;
            oldest = groups > 0 ? Group(0) : null;
        }
    }

    private struct WareContact
    {
        public double Celsius;
        public double RackDecay;
        public double SoilOff;
        public SlabPropagator? Propagator;
    }

    // What ware meets in each place: the tanks, then gap, room and final rinse.
    private sealed class Contacts(int tanks)
    {
        private readonly WareContact[] places = new WareContact[tanks + 3];

        public ref WareContact At(int place) => ref places[place >= 0 ? place : tanks - 1 - place];
    }
}
