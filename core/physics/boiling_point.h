#ifndef CORE_PHYSICS_BOILING_POINT_H
#define CORE_PHYSICS_BOILING_POINT_H

namespace tamis::physics {

/// Pressure of the air in Pa at a height above the sea in m: ISO 2533 standard atmosphere (15 °C and 101,325 Pa at the
/// sea, 6.5 K less a km), good from -1,000 to 11,000 m; heights beyond are taken as the nearest end. Weather shifts it
/// by about 3 %.
double air_pressure(double height_m);

/// Temperature in °C at which water boils under a pressure in Pa: IAPWS-IF97, region 4, backward equation; good from
/// 611 Pa to 22 MPa, pressures beyond are taken as the nearest end.
double boiling_point_at(double pressure_pa);

/// Of water in an open pan at a height above the sea in m, in °C: 100.0 at the sea, 93.3 at 2,000 m. Weather shifts it
/// by about 1 K.
double boiling_point(double height_m);

}  // namespace tamis::physics

#endif
