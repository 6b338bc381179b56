using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Verifying;

namespace Foundress.Reference.Tests.Verifying;

internal static class JarPairs
{
    public static JarPair Of(int before, int after, int beesBefore = 300, int beesAfter = 300) =>
        new([new JarCount(before, BeeCount.Counted(beesBefore))], [new JarCount(after, BeeCount.Counted(beesAfter))]);
}
